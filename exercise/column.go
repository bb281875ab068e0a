package exercise

import (
	"gonum.org/v1/gonum/spatial/r3"

	"steelyard/human"
	"steelyard/planar"
	"steelyard/reference"
)

// Column is one joint axis along the travel: slices with one entry for each
// position, zero where Result.Gap has an entry.
type Column struct {
	Joint     Joint
	Angle     []planar.Angle // of the joint, see package human
	Moment    []float64      // N·m, internal, in the sense of the angle
	Action    []human.Action // that gives the moment
	Available []float64      // N·m for that action there; 0 where nobody published any
	Effort    []float64      // |Moment| over Available
	Low, High []float64      // effort of somebody stronger, or weaker, within the band of the strength
	Stretched []bool         // the strength is taken beyond the angles or speeds that its source tested
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
	Effort  []float64 // the greatest of them
	Limiter []int     // which of Joints that is

	// Sticking is the position of the greatest effort, leaving out, where any
	// others are left, those whose limiting strength is a guess (see guess); -1
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

// Peak returns the greatest effort of the phase.
func (p *Phase) Peak() float64 {
	if p.Sticking < 0 {
		return 0
	}
	return p.Effort[p.Sticking]
}

func newPhase(n int, joints []Joint) Phase {
	p := Phase{Force: make([]float64, n), Push: make([]r3.Vec, n), Effort: make([]float64, n), Limiter: make([]int, n), Sticking: -1}
	for _, j := range joints {
		p.Joints = append(p.Joints, Column{Joint: j, Angle: make([]planar.Angle, n), Moment: make([]float64, n), Action: make([]human.Action, n),
			Available: make([]float64, n), Effort: make([]float64, n), Low: make([]float64, n), High: make([]float64, n), Stretched: make([]bool, n)})
	}
	return p
}

// record writes position i.
func (p *Phase) record(i int, st *stance, f float64, x [2]float64) {
	p.Force[i] = f
	push := r3.Add(r3.Scale(f, st.push.per), st.push.fixed)
	for k := range st.push.free {
		push = r3.Add(push, r3.Scale(x[k], st.push.across[k]))
	}
	p.Push[i] = push
	for k := range p.Joints {
		c, d := &p.Joints[k], &st.demands[k]
		m := st.moment(k, f, x)
		c.Angle[i], c.Moment[i] = d.angle, m
		c.Action[i] = d.joint.actionOf(st.placement.Arm, m)
		e, ok := d.effort(m)
		if !ok {
			continue
		}
		can := &d.can[0]
		if m < 0 {
			can = &d.can[1]
		}
		c.take(i, m, e, can)
		if e > p.Effort[i] {
			p.Effort[i], p.Limiter[i] = e, k
		}
	}
	if p.Sticking < 0 || p.sticksMore(i, p.Sticking) {
		p.Sticking, p.Limiting = i, p.Limiter[i]
	}
}

// sticksMore reports whether position i comes before k as the sticking point.
func (p *Phase) sticksMore(i, k int) bool {
	if a, b := p.guessed(i), p.guessed(k); a != b {
		return b
	}
	return p.Effort[i] > p.Effort[k]
}

// guessed reports whether the strength that limits at a position is a guess.
func (p *Phase) guessed(i int) bool {
	c := &p.Joints[p.Limiter[i]]
	return c.Joint.guess(c.Stretched[i])
}

// guess reports whether a strength beyond the angles its source tested is worth
// nothing as a limit. The published curves of hip, knee and ankle are cosines
// that fall to nothing in deep bends where nobody measured; those of the upper
// body level off there and are used, marked as they are.
func (j Joint) guess(stretched bool) bool {
	return stretched && (j == Hip || j == Knee || j == Ankle)
}

func (c *Column) take(i int, moment, effort float64, can *human.Available) {
	c.Available[i], c.Effort[i], c.Stretched[i] = can.Moment, effort, can.Extrapolated
	m := abs(moment)
	c.Low[i] = m / can.High
	c.High[i] = m / max(can.Low, 1e-3*can.Moment) // a band that reaches zero has no upper end; a thousandfold stands for it
	if effort >= c.Effort[c.Peak] {
		c.Peak, c.Source = i, can.Source
	}
	c.Weakest = c.Weakest.Weakest(can.Source.Mark)
	c.Rescaled = c.Rescaled || can.Rescaled
}
