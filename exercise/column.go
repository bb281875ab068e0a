package exercise

import (
	"fmt"
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"steelyard/human"
	"steelyard/planar"
	"steelyard/reference"
)

// Column is one joint axis along the travel: slices with one entry for each
// position, zero where Result.Gap has an entry. Where the strength is no figure
// to use, see human.Available.Fallen, Available is zero and Effort, Low and High
// are NaN.
type Column struct {
	Joint     Joint
	Angle     []planar.Angle // of the joint, see package human
	Moment    []float64      // N·m, internal, in the sense of the angle
	Action    []human.Action // that gives the moment
	Available []float64      // N·m for that action there; 0 where nobody published any
	Effort    []float64      // |Moment| over Available
	Low, High []float64      // effort of somebody stronger, or weaker, within the band of the strength
	Stretched []bool         // the strength is taken beyond the angles or speeds that its source tested
	Untested  []bool         // so far that there is no figure
	Source    reference.Source
	Weakest   reference.Mark // of the strengths used
	Rescaled  bool           // a measurement of this person sets the level
	Peak      int            // position of the greatest effort
}

// Phase is one way along the travel, lifting or lowering.
type Phase struct {
	Force   []float64 // N, of one limb on the machine along the path
	Push    []r3.Vec  // N, on the body, ground frame, right side
	Joints  []Column  // those that are asked
	Effort  []float64 // the greatest of those whose strength is no guess; NaN where Unknown has an entry
	Limiter []int     // which of Joints that is
	Unknown []string  // why no effort is told although the body is there: a joint that the exercise trains, whose strength is a guess or no figure, may be asked for more than any other; else empty

	// Sticking is the position of the greatest effort of any joint, leaving out,
	// where any others are left, those whose strength is a guess (see guess); -1
	// if there is no effort anywhere.
	Sticking int
	Limiting int // the joint there, of Joints
}

// Column returns the column of a joint axis, or nil.
func (p *Phase) Column(j Joint) *Column {
	for i := range p.Joints {
		if p.Joints[i].Joint == j {
			return &p.Joints[i]
		}
	}
	return nil
}

// Peak returns the greatest effort of the phase, that of Limiting at Sticking.
func (p *Phase) Peak() float64 {
	if p.Sticking < 0 {
		return 0
	}
	return p.Joints[p.Limiting].Effort[p.Sticking]
}

func newPhase(n int, joints []Joint) Phase {
	p := Phase{Force: make([]float64, n), Push: make([]r3.Vec, n), Effort: make([]float64, n), Limiter: make([]int, n), Unknown: make([]string, n), Sticking: -1}
	for _, j := range joints {
		p.Joints = append(p.Joints, Column{Joint: j, Angle: make([]planar.Angle, n), Moment: make([]float64, n), Action: make([]human.Action, n),
			Available: make([]float64, n), Effort: make([]float64, n), Low: make([]float64, n), High: make([]float64, n), Stretched: make([]bool, n), Untested: make([]bool, n)})
	}
	return p
}

// record writes position i of an exercise.
func (p *Phase) record(i int, x Exercise, st *stance, f float64, across [2]float64) {
	p.Force[i] = f
	push := r3.Add(r3.Scale(f, st.push.per), st.push.fixed)
	for k := range st.push.free {
		push = r3.Add(push, r3.Scale(across[k], st.push.across[k]))
	}
	p.Push[i] = push
	var untold doubt
	for k := range p.Joints {
		c, d := &p.Joints[k], &st.demands[k]
		m := st.moment(k, f, across)
		c.Angle[i], c.Moment[i] = d.angle, m
		c.Action[i] = d.joint.actionOf(st.placement.Arm, m)
		can := d.strength(m)
		if can.Fallen {
			c.noFigure(i)
			untold.raise(x, c, i, abs(m)/can.Moment)
			continue
		}
		e, ok := d.effort(m)
		if !ok {
			continue
		}
		c.take(i, m, e, can)
		if c.Guessed(i) {
			untold.raise(x, c, i, e)
		} else if e > p.Effort[i] {
			p.Effort[i], p.Limiter[i] = e, k
		}
		if p.Sticking < 0 || p.sticksMore(k, i) {
			p.Sticking, p.Limiting = i, k
		}
	}
	if untold.effort > p.Effort[i] { // else, whatever that joint can do, another is the limit
		p.Unknown[i], p.Effort[i] = untold.why, math.NaN()
	}
}

// doubt is the most that a joint the exercise trains may be asked of whose
// strength is a guess, or no figure at all. Others are left out: what the weight
// of a limb in its seat asks of the hip would hide the joints that work.
type doubt struct {
	effort float64
	why    string
}

func (d *doubt) raise(x Exercise, c *Column, i int, effort float64) {
	if effort <= d.effort || !slices.Contains(x.Works(), c.Action[i]) {
		return
	}
	beyond := "beyond the angles that anybody was tested at"
	if c.Untested[i] {
		beyond = "an angle for which no measured strength is known"
	}
	*d = doubt{effort, fmt.Sprintf("%v is asked at %.0f°, %s", c.Action[i], c.Angle[i].Degrees(), beyond)}
}

// noFigure marks position i as one where no strength can be told.
func (c *Column) noFigure(i int) {
	c.Stretched[i], c.Untested[i] = true, true
	c.Effort[i], c.Low[i], c.High[i] = math.NaN(), math.NaN(), math.NaN()
}

// sticksMore reports whether joint k at position i comes before the sticking
// point so far.
func (p *Phase) sticksMore(k, i int) bool {
	c, most := &p.Joints[k], &p.Joints[p.Limiting]
	if a, b := c.Guessed(i), most.Guessed(p.Sticking); a != b {
		return b
	}
	return c.Effort[i] > most.Effort[p.Sticking]
}

// Guessed reports whether the strength at position i is a guess, or no figure:
// worth nothing as a limit.
func (c *Column) Guessed(i int) bool { return c.Untested[i] || c.Joint.guess(c.Stretched[i]) }

// guess reports whether a strength beyond the angles its source tested is worth
// nothing as a limit. The published curves of hip, knee and ankle are cosines
// that fall to nothing in deep bends where nobody measured: near the tested
// angles they are shown, marked, and name no sticking point; further down they
// are no figure at all. Those of the upper body level off there
// and are used, marked as they are.
func (j Joint) guess(stretched bool) bool {
	return stretched && (j == Hip || j == Knee || j == Ankle)
}

func (c *Column) take(i int, moment, effort float64, can *human.Available) {
	c.Available[i], c.Effort[i], c.Stretched[i] = can.Moment, effort, can.Extrapolated
	m := abs(moment)
	c.Low[i] = m / can.High
	c.High[i] = m / max(can.Low, 1e-3*can.Moment) // a band that reaches zero has no upper end; a thousandfold stands for it
	if effort >= c.Effort[c.Peak] || c.Untested[c.Peak] {
		c.Peak, c.Source = i, can.Source
	}
	c.Weakest = c.Weakest.Weakest(can.Source.Mark)
	c.Rescaled = c.Rescaled || can.Rescaled
}
