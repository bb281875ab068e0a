package mechanism

import (
	"math"
	"testing"

	"steelyard/planar"
)

// TestSharesAddUp: what each source asks by itself is what the machine takes
// when only that source is left, and together they are the holding force.
func TestSharesAddUp(t *testing.T) {
	for _, c := range classics() {
		t.Run(c.name, func(t *testing.T) {
			md := mustCompile(t, c.m)
			eachInside(t, md, func(q, _ float64) {
				st := moved(t, md, q)
				sum, size := 0.0, 1.0
				for _, s := range st.Shares() {
					sum += s.Force
					size = math.Max(size, math.Abs(s.Force))
					alone := mustForce(t, mustMove(t, only(c.m, s), q), Hold)
					near(t, s.Name+" alone, N", s.Force, alone, 1e-9*(1+math.Abs(alone)))
				}
				near(t, "sum of shares, N", sum, mustForce(t, st, Hold), 1e-9*size)
			})
		})
	}
}

// only leaves the machine no load but the named one.
func only(m Machine, s Share) Machine {
	m = clone(m)
	m.Wheels = nil
	for i := range m.Links {
		if s.Kind != OwnWeight || m.Links[i].Name != s.Name {
			m.Links[i].Mass = 0
		}
	}
	for i := range m.Weights {
		if s.Kind != LoadWeight || m.Weights[i].Name != s.Name || m.Weights[i].Link != s.Link {
			m.Weights[i].Mass = 0
		}
	}
	if s.Kind != ChainWeight {
		m.Chains = nil
	}
	elements := m.Elements
	m.Elements = nil
	for _, e := range elements {
		if s.Kind == Elastic && e.Name == s.Name {
			m.Elements = append(m.Elements, e)
		}
	}
	return m
}

// TestInstantCentre: of Norton's coupler it is where crank and rocker, drawn
// out, meet (Aronhold and Kennedy's theorem of three centres).
func TestInstantCentre(t *testing.T) {
	m := nortonFourBar(40 * planar.Degree)
	st := mustCompile(t, m).NewState()
	got, ok := st.Center(2)
	if !ok {
		t.Fatal("the coupler turns, yet has no centre")
	}
	pa, pb, o4 := m.Joints[1].At, m.Joints[2].At, m.Joints[3].At
	crank, rocker := pa.Unit(), pb.Sub(o4).Unit()
	want := crank.Scale(o4.Cross(rocker) / crank.Cross(rocker))
	near(t, "centre, m", got.Sub(want).Norm(), 0, 1e-12)
	for _, pinned := range []struct {
		link LinkID
		axis vec
	}{{1, vec{}}, {3, o4}} {
		axis, _ := st.Center(pinned.link)
		near(t, "axis, m", axis.Sub(pinned.axis).Norm(), 0, 1e-12)
	}

	if _, ok := mustCompile(t, parallelogram()).NewState().Center(2); ok {
		t.Error("a level coupler only slides, yet has a centre")
	}
}

// TestArmsMakeTheForce: on one link force · its arm = weight · its level distance.
func TestArmsMakeTheForce(t *testing.T) {
	m := lever(0.62, 1.05, 60)
	m.Contact.At.Y = 0.2
	for _, q := range []float64{-0.4, 0, 0.8} {
		st := mustMove(t, m, q)
		load, contact, ok := st.Arms(1, st.Pose(1).Point(m.Weights[0].At))
		if !ok {
			t.Fatal("no arms")
		}
		near(t, "weight's arm, m", load, 0.62*math.Cos(q), 1e-12)
		near(t, "contact's arm, m", contact, math.Hypot(1.05, 0.2), 1e-12)
		near(t, "force, N", mustForce(t, st, Hold), 60*Gravity*load/contact, 1e-9)
	}
}

// TestDrawnRopes: the straight pieces that are drawn are those found without
// the solver, and the whole way keeps its length to what chords lose.
func TestDrawnRopes(t *testing.T) {
	for _, c := range classics() {
		if len(c.m.Ropes) == 0 {
			continue
		}
		t.Run(c.name, func(t *testing.T) {
			md := mustCompile(t, c.m)
			first := 0.0
			eachInside(t, md, func(q, _ float64) {
				st := moved(t, md, q)
				for k, s := range strands(t, st, c.m.Ropes[0].Route) {
					drawn := st.Spans(0)[k]
					near(t, "length, m", drawn.To.Sub(drawn.From).Norm(), s.length, 1e-9)
					near(t, "line, m", s.unit.Cross(drawn.From.Sub(s.on)), 0, 1e-9)
					near(t, "line, m", s.unit.Cross(drawn.To.Sub(s.on)), 0, 1e-9)
				}
				way, length := st.Course(0), 0.0
				for i := 1; i < len(way); i++ {
					length += way[i].Sub(way[i-1]).Norm()
				}
				if first == 0 {
					first = length
				}
				near(t, "whole way, m", length, first, 2e-3)
			})
		})
	}
}
