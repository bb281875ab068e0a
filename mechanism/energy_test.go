package mechanism

import (
	"math"
	"testing"
)

// potential returns the potential energy in J of everything that acts, from
// poses alone: m·g·y, ½λg·y² of a chain, and each law's integral.
func potential(md *Model, at poser) float64 {
	m := md.Machine()
	lean := math.Cos(float64(m.Plane.Tilt))
	height := func(l LinkID, p vec) float64 {
		y := at.Pose(l).Point(p).Y
		if l != Ground && m.Links[l-1].Upright {
			return y
		}
		return y * lean
	}
	total := 0.0
	for i, l := range m.Links {
		total += l.Mass * Gravity * height(LinkID(i+1), l.Center)
	}
	for _, w := range m.Weights {
		total += w.Mass * Gravity * height(w.Link, w.At)
	}
	for _, c := range m.Chains {
		off := (at.Pose(c.Link).Point(c.At).Y - c.Floor) * lean
		hanging := math.Min(math.Max(off, 0), c.Length)
		total += c.Density * Gravity * (hanging*hanging/2 + math.Max(off-c.Length, 0)*c.Length)
	}
	for i := range m.Elements {
		total += stored(m, at, &m.Elements[i])
	}
	return total
}

// stored returns the energy in J of an element between two points or about a
// pin.
func stored(m *Machine, at poser, e *Element) float64 {
	var x float64
	if len(e.Route) == 2 {
		a, b := e.Route[0], e.Route[1]
		x = at.Pose(b.Link).Point(b.At).Sub(at.Pose(a.Link).Point(a.At)).Norm()
	} else {
		j := m.Joints[e.Joint]
		x = float64(at.Turn(j.B) - at.Turn(j.A))
	}
	switch l := e.Law.(type) {
	case Spring: // ½k·x² + F₀·x of the stretch
		d := x - l.Free
		if l.PullOnly {
			d = math.Max(d, 0)
		}
		return l.Preload*d + l.Rate*d*d/2
	case GasSpring: // isothermal: F·V·ln(V/(V-x))
		return l.Force * l.Column * math.Log(l.Column/(l.Column-math.Max(0, l.Extended-x)))
	case Band: // ½Aμ·L₀(λ² + 2/λ - 3)
		s := math.Max(x/l.Free, 1)
		return l.Area * l.Shear * l.Free * (s*s + 2/s - 3) / 2
	case Steady:
		return l.Force * x
	}
	panic("no energy for this law")
}

// slopeOf differentiates f with five points; its error is of order h⁴.
func slopeOf(h float64, f func(dq float64) float64) float64 {
	return (8*(f(h)-f(-h)) - (f(2*h) - f(-2*h))) / (12 * h)
}

// TestForceIsSlopeOfEnergy: virtual work by finite differences of energy and
// of the contact's place, for every family.
func TestForceIsSlopeOfEnergy(t *testing.T) {
	for _, c := range classics() {
		t.Run(c.name, func(t *testing.T) {
			md := mustCompile(t, c.m)
			eachInside(t, md, func(q, h float64) {
				at := func(dq float64) *State { return moved(t, md, q+dq) }
				work := slopeOf(h, func(dq float64) float64 { return potential(md, at(dq)) })
				x := slopeOf(h, func(dq float64) float64 { return at(dq).contactPoint().X })
				y := slopeOf(h, func(dq float64) float64 { return at(dq).contactPoint().Y })
				way := md.forward * math.Hypot(x, y)
				f := mustForce(t, at(0), Hold)
				near(t, "force, N", f, work/way, 1e-6*(1+math.Abs(f)))
			})
		})
	}
}

// TestRatesAreSlopes: tangent, lift ratio, effective mass and its slope against
// finite differences of poses.
func TestRatesAreSlopes(t *testing.T) {
	for _, c := range classics() {
		t.Run(c.name, func(t *testing.T) {
			md := mustCompile(t, c.m)
			eachInside(t, md, func(q, h float64) {
				at := func(dq float64) *State { return moved(t, md, q+dq) }
				velocity := func(l LinkID, p vec) vec {
					return vec{
						X: slopeOf(h, func(dq float64) float64 { return at(dq).Pose(l).Point(p).X }),
						Y: slopeOf(h, func(dq float64) float64 { return at(dq).Pose(l).Point(p).Y }),
					}
				}
				spin := func(l LinkID) float64 {
					return slopeOf(h, func(dq float64) float64 { return float64(at(dq).Turn(l)) })
				}
				contact := velocity(c.m.Contact.Link, c.m.Contact.At)
				way := contact.Norm()
				mass, load, loads := 0.0, 0.0, 0.0
				for i, l := range c.m.Links {
					v, w := velocity(LinkID(i+1), l.Center), spin(LinkID(i+1))
					mass += l.Mass*v.Dot(v) + l.Inertia*w*w
				}
				for _, w := range c.m.Weights {
					v, s := velocity(w.Link, w.At), spin(w.Link)
					mass += w.Mass*v.Dot(v) + w.Inertia*s*s
					if w.Load {
						load, loads = load+w.Mass*v.Dot(v), loads+w.Mass
					}
				}
				for _, ch := range c.m.Chains {
					lean := c.m.Plane.Slope()
					v := velocity(ch.Link, ch.At).Y * lean
					mass += ch.Density * lean * (at(0).Pose(ch.Link).Point(ch.At).Y - ch.Floor) * v * v
				}
				for _, w := range c.m.Wheels {
					j := c.m.Joints[w.Joint]
					s := (spin(j.B) - spin(j.A)) * w.Ratio
					mass += w.Inertia * s * s
				}
				st := at(0)
				in := st.Inertia()
				_, tangent, _ := st.path()
				near(t, "tangent across the path", tangent.Cross(contact)/way, 0, 1e-9)
				near(t, "tangent along the path", md.forward*tangent.Dot(contact)/way, 1, 1e-9)
				near(t, "effective mass, kg", in.Mass, mass/(way*way), 1e-8*(1+in.Mass))
				near(t, "its slope, kg/m", in.Slope, md.forward/way*slopeOf(h, func(dq float64) float64 { return at(dq).Inertia().Mass }), 1e-6*(1+math.Abs(in.Slope)))
				if loads > 0 {
					near(t, "lift ratio", st.LiftRatio(), math.Sqrt(load/loads)/way, 1e-8)
				}
			})
		})
	}
}

// TestWorkIsEnergy: without friction the work of the hold force over the whole
// travel is what the potential energy has grown by.
func TestWorkIsEnergy(t *testing.T) {
	for _, c := range classics() {
		t.Run(c.name, func(t *testing.T) {
			md := mustCompile(t, c.m)
			sw := mustSweep(t, c.m, 801)
			work, most := 0.0, 0.0
			for i := 2; i < sw.Len(); i += 2 { // Simpson over uneven travel
				h0, h1 := sw.Travel[i-1]-sw.Travel[i-2], sw.Travel[i]-sw.Travel[i-1]
				work += (h0 + h1) / 6 * ((2-h1/h0)*sw.Hold[i-2] + (h0+h1)*(h0+h1)/(h0*h1)*sw.Hold[i-1] + (2-h0/h1)*sw.Hold[i])
				most = math.Max(most, math.Abs(sw.Hold[i]))
			}
			grown := potential(md, row{sw, sw.Len() - 1}) - potential(md, row{sw, 0})
			near(t, "work, J", work, grown, 1e-6*(1+most*sw.Travel[sw.Len()-1]))
		})
	}
}

// moved returns a fresh state at q.
func moved(t testing.TB, md *Model, q float64) *State {
	t.Helper()
	st := md.NewState()
	if err := st.MoveTo(q); err != nil {
		t.Fatal(err)
	}
	return st
}

// eachInside calls check at places within the travel, with a step for
// differences that stays within it.
func eachInside(t testing.TB, md *Model, check func(q, h float64)) {
	t.Helper()
	d := md.Machine().Drive
	for _, share := range []float64{0.07, 0.31, 0.5, 0.77, 0.93} {
		check(d.From+share*(d.To-d.From), 1e-3*math.Abs(d.To-d.From))
		if t.Failed() {
			t.Fatalf("at %.0f %% of the travel", 100*share)
		}
	}
}
