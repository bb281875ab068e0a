package sketch

import (
	"testing"

	"steelyard/mechanism"
	"steelyard/planar"
)

// A bar between two pins with a horn beside its middle: the bar, and a bracket
// square to it.
func TestSkeletonIsBarAndBracket(t *testing.T) {
	m := &mechanism.Machine{
		Links:  []mechanism.Link{{Name: "bar"}, {Name: "other"}},
		Joints: []mechanism.Joint{{A: mechanism.Ground, B: 1, At: planar.Vec{}}, {A: 1, B: 2, At: planar.Vec{X: 1}}},
		Weights: []mechanism.Weight{
			{Link: 1, At: planar.Vec{X: 0.5, Y: 0.25}},
			{Link: 1, At: planar.Vec{X: 0.25}}, // on the bar: no bracket
		},
		Contact: mechanism.Contact{Link: 2, At: planar.Vec{X: 1}},
	}
	got := Skeleton(m, 1)
	want := [][2]planar.Vec{{{}, {X: 1}}, {{X: 0.5}, {X: 0.5, Y: 0.25}}}
	if len(got) != len(want) || got[0] != want[0] || got[1] != want[1] {
		t.Errorf("got %v, want %v", got, want)
	}
	if n := len(Places(m, 1)); n != 4 {
		t.Errorf("%d places on the bar, want 4", n)
	}
	if alone := Skeleton(m, 2); len(alone) != 0 {
		t.Errorf("a link with one place: %v", alone)
	}
}
