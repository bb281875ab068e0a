package exercise

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// alignment fills Misaligned, Creep and Shear.
func (r *Result) alignment() {
	st, n := &r.Setup.Station, r.Setup.Len()
	if st.HasAxis {
		r.Misaligned = make([]float64, n)
	}
	pad := st.Contact == Pad && st.On != OnShoulders && st.On != OnHips
	if pad {
		r.Creep, r.Shear = make([]float64, n), make([]float64, n)
	}
	if st.Loose {
		r.Pressure = make([]float64, n)
	}
	first := math.NaN()
	for i := range n {
		if r.Gap[i] != "" {
			continue
		}
		p := &r.Placements[i]
		if r.Pressure != nil {
			r.Pressure[i] = r.pressure(i)
		}
		if st.HasAxis {
			r.Misaligned[i] = r.Setup.misalignment(p)
		}
		if pad {
			if math.IsNaN(first) {
				first = p.Along
			}
			r.Creep[i] = p.Along - first
			r.Shear[i] = r.Lifting.Force[i] * math.Tan(math.Acos(min(1, r3.Dot(p.Normal, p.Path))))
		}
	}
}

// misalignment returns the distance of the body joint from the machine's axis,
// a line square to the plane of its motion.
func (s *Setup) misalignment(p *Placement) float64 {
	along := r3.Cross(s.space.x, s.space.y)
	d := r3.Sub(p.Joint, s.Axis)
	return r3.Norm(r3.Sub(d, r3.Scale(r3.Dot(d, along), along)))
}

// Misalignment returns, for a placement, how far the body joint is from the
// machine's axis (m) and whether the station names one.
func (s *Setup) Misalignment(p *Placement) (float64, bool) {
	if !s.Station.HasAxis {
		return 0, false
	}
	return s.misalignment(p), true
}

// pressure returns how far from the heel, along the sole, the ground pushes at
// position i, m: where it was assumed, moved by the moment of the whole body's
// balance over the force square to the sole.
func (r *Result) pressure(i int) float64 {
	p, push := &r.Placements[i], &r.lifting[i].push
	up := r3.Cross(p.Trunk.Z, p.Toe)
	f := r3.Dot(r.Lifting.Push[i], up)
	if f <= 0 {
		return math.NaN()
	}
	turn := push.turnPer*r.Lifting.Force[i] + push.turnFixed
	sense := r3.Cross(p.Toe, up).Z // +1 where the person faces forward
	return r.Setup.pressure(&r.Body.Links) + sense*turn/f
}
