package exercise

import (
	"errors"
	"fmt"

	"steelyard/human"
	"steelyard/mechanism"
)

// Options says how to put a person through the travel. The zero value is ready
// to use.
type Options struct {
	Tempo *mechanism.Tempo // nil holds at each position, with neither speed nor inertia
	Along bool             // push along the path even where the machine leaves the direction free
}

// Result is a person on a machine along its travel. Slices by position have
// the sweep's length.
type Result struct {
	Setup     *Setup
	Body      *human.Body
	Direction Direction // of the contact force, and how it came about
	Tempo     *mechanism.Tempo

	Travel     []float64 // m
	Gap        []string  // why there is nothing; empty where there is
	Faults     []Fault
	Placements []Placement

	Lifting, Lowering Phase
	Still             *Phase // at a tempo: lifting without speed and inertia, to compare
	Thirds            []MuscleThirds
	Maximum           *Prediction // nil where no load can be predicted

	Pressure   []float64 // m from the heel to where the ground pushes a body that balances its load itself; beyond the foot it would tip; nil elsewhere
	Misaligned []float64 // m, of body joint and machine axis across the plane; nil without an axis
	Creep      []float64 // m, of the pad along its segment from the first position; nil without a pad
	Shear      []float64 // N, of the part of the machine's force along the segment that a pad with friction would leave there; nil without a pad

	lifting []stance // the last lifting phase that was run
	tested  bool     // predictions count only strengths within what was tested
}

// ErrNowhere is returned for a body that the machine cannot hold anywhere.
var ErrNowhere = errors.New("exercise: the body reaches the contact at no position")

// Run puts a person on a machine. The sweep is the model's; capacity is the
// body's. It fails with an error that wraps ErrNowhere if the body can be
// placed nowhere, and with the machine's own error at a tempo it cannot play.
// Single positions that fail are gaps with their reason.
//
// Accuracy: moments are exact for rigid segments to rounding at rest; at a
// tempo see stencil. The machine's forces are those of the sweep, or of a
// stroke read by straight lines.
func Run(s *Setup, b *human.Body, c *human.Capacity, sw *mechanism.Sweep, o Options) (*Result, error) {
	if sw.Len() != s.Len() {
		return nil, fmt.Errorf("exercise: the sweep has %d positions and the setup %d; make both from one sweep", sw.Len(), s.Len())
	}
	r := &Result{Setup: s, Body: b, Tempo: o.Tempo, Travel: sw.Travel, Direction: s.direction(o)}
	if err := r.place(sw); err != nil {
		return nil, err
	}
	var err error
	if r.Lifting, err = r.phase(c, sw, o, false); err != nil {
		return nil, err
	}
	if r.Lowering, err = r.phase(c, sw, o, true); err != nil {
		return nil, err
	}
	if o.Tempo != nil {
		still := o
		still.Tempo = nil
		p, err := r.phase(c, sw, still, false)
		if err != nil {
			return nil, err
		}
		r.Still = &p
	}
	r.alignment()
	r.Thirds = r.thirds()
	r.Maximum = r.predict(sw)
	return r, nil
}

// direction tells how the contact force's direction comes about.
func (s *Setup) direction(o Options) Direction {
	switch st := &s.Station; {
	case st.On == OnShoulders && st.BackPad && !o.Along:
		return LeastEffort
	case st.On == OnShoulders && st.BackPad:
		return AlongPath
	case st.On == OnShoulders || st.On == OnHips || st.On == OnKnees:
		return OfStatics
	case st.Contact == Pad:
		return SquareToSegment
	case st.Contact == RopeHandle:
		return AlongRope
	case s.bar() && !o.Along:
		return LeastEffort
	case st.Contact == Held:
		return Downward
	case (st.Contact == Grip || st.Contact == FootPlate) && !o.Along:
		return LeastEffort
	}
	return AlongPath
}

// place fills the columns that hold whatever the force.
func (r *Result) place(sw *mechanism.Sweep) error {
	n := r.Setup.Len()
	r.Gap, r.Faults, r.Placements = make([]string, n), make([]Fault, n), make([]Placement, n)
	placed := 0
	var worst Fault
	for i := range n {
		f := r.Setup.Place(&r.Placements[i], r.Body, i)
		r.Faults[i] = f
		switch {
		case !f.Placed():
			r.Gap[i], worst = f.String(), f
		case sw.Stops[i] != nil:
			r.Gap[i] = sw.Stops[i].Error()
		default:
			placed++
		}
	}
	if placed == 0 {
		return fmt.Errorf("%w: %v", ErrNowhere, worst)
	}
	return nil
}

// phase fills the columns of lifting or lowering.
func (r *Result) phase(c *human.Capacity, sw *mechanism.Sweep, o Options, lowering bool) (Phase, error) {
	force, err := forces(r.Setup.model, sw, o.Tempo, lowering)
	if err != nil {
		return Phase{}, err
	}
	stances := r.stances(c, sw, o, lowering)
	if !lowering {
		r.lifting = stances
	}
	var p Phase
	share := 1 / r.Setup.Limbs()
	for i := range stances {
		st := &stances[i]
		if r.Gap[i] != "" {
			continue
		}
		if p.Joints == nil {
			p = newPhase(len(stances), st.joints())
		}
		f := force[i] * share
		x, _ := st.solve(f, r.Direction)
		p.record(i, r.Setup.Exercise, st, f, x)
	}
	return p, nil
}

func (st *stance) joints() []Joint {
	var js []Joint
	for i := range st.n {
		js = append(js, st.demands[i].joint)
	}
	return js
}

// solve returns the force across the path and the greatest effort for a force.
func (st *stance) solve(f float64, d Direction) (x [2]float64, z float64) {
	if d != LeastEffort {
		return x, st.greatest(f, x)
	}
	return st.leastEffort(f)
}

// stances readies every position for any force.
func (r *Result) stances(c *human.Capacity, sw *mechanism.Sweep, o Options, lowering bool) []stance {
	s, n := r.Setup, r.Setup.Len()
	out := make([]stance, n)
	state := s.model.NewState()
	forward := 1.0
	if sw.Driver[n-1] < sw.Driver[0] {
		forward = -1
	}
	whole := sw.Travel[n-1]
	for i := range out {
		if r.Gap[i] != "" {
			continue
		}
		var p pace
		if o.Tempo != nil && whole > 0 {
			if around, ok := s.around(r.Body, state, i); ok {
				v, a := gait(sw.Travel[i]/whole, whole, o.Tempo, lowering)
				p = around.pace(s, r.Body, v, a, forward)
			}
		}
		st := &out[i]
		st.placement = r.Placements[i]
		s.face(st, r.Body, p, i)
		st.capacities(c)
	}
	return out
}
