package mechanism

import (
	"fmt"
	"testing"

	"steelyard/planar"
)

func TestCourseIsAsLongAsTheRope(t *testing.T) {
	// A chord of the angle a is short of its arc by the share a²/24 at most, so
	// the drawn way is that close to the length by which the loop was closed.
	for _, row := range []struct {
		name string
		m    Machine
		q    float64
	}{
		{"cylinder, measured pose", wrapLever(), 0},
		{"cylinder, turned", wrapLever(), float64(-60 * planar.Degree)},
		{"cam at the end", camMachine(planar.Circle{Radius: 0.12}, 50), 0.7},
		{"four strands", tackle(4, 80, RopeLoss{}), 0},
	} {
		st := mustMove(t, row.m, row.q)
		way := st.Course(0)
		drawn := 0.0
		for i := 1; i < len(way); i++ {
			drawn += way[i].Sub(way[i-1]).Norm()
		}
		length := st.lines[0].length
		if short := length - drawn; short < -1e-9 || short > length*chordTurn*chordTurn/24 {
			t.Errorf("%s: drawn %.9g m, rope %.9g m", row.name, drawn, length)
		}
	}
}

// Whoever draws asks for lines by their number: the two ways to count must agree.
func TestLinesAreCountedAsTheModelCounts(t *testing.T) {
	m := tackle(2, 80, RopeLoss{})
	route := Route{{Name: "post", At: planar.Vec{X: 1, Y: 1}}, {Name: "eye", Link: 1, At: planar.Vec{X: 1}}}
	m.Elements = []Element{{Name: "spring", Route: route, Law: Steady{1}}, {Name: "band", Route: route, Law: Steady{2}}}
	md, err := Compile(m)
	if err != nil {
		t.Fatal(err)
	}
	lines := m.Lines()
	if len(lines) != len(md.lines) || len(lines) != len(m.Ropes)+2 {
		t.Fatalf("%d lines, the model has %d", len(lines), len(md.lines))
	}
	for i, l := range lines {
		kind := "element"
		if l.Element == nil {
			kind = "rope"
		}
		if part := fmt.Sprintf("%s %q", kind, l.Name); part != md.lines[i].part || len(l.Route) != len(md.lines[i].route) {
			t.Errorf("line %d is %s, in the model %s", i, part, md.lines[i].part)
		}
	}
}

func TestStationOutlineLiesOnTheCircle(t *testing.T) {
	st := mustMove(t, wrapLever(), -0.5)
	axis, outline := st.Station(0, 1)
	near(t, "axis, x", axis.X, 0, 0)
	near(t, "axis, y", axis.Y, 1.5, 0)
	for _, p := range outline {
		near(t, "radius, m", p.Sub(axis).Norm(), 0.1, 1e-12)
	}
	if _, outline := st.Station(0, 0); outline != nil {
		t.Errorf("a point has an outline of %d places, want none", len(outline))
	}
	if n := len(outline); n != 72 {
		t.Errorf("outline of %d places, want one every 5°", n)
	}
}
