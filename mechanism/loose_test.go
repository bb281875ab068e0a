package mechanism

import (
	"testing"
)

// TestGuideThatHoldsTheStack: guides that drag with more than the stack weighs
// keep it where it is on the way down. The rope then hangs loose and the hand
// feels nothing, while lifting takes weight and drag together (equilibrium of
// the stack).
func TestGuideThatHoldsTheStack(t *testing.T) {
	const mass, drag = 10.0, 150.0
	m := hoist(mass, vec{}, vec{X: 0.5, Y: 1}, 0, Station{Name: "top", Link: Ground, At: vec{Y: 1}})
	m.Joints[0].Friction.Drag = drag
	sw := mustCompile(t, m).NewSweep(5)
	if err := sw.state.model.SweepInto(sw); err != nil {
		t.Fatal(err)
	}
	for i := range sw.Driver {
		if sw.Stops[i] != nil {
			t.Fatalf("position %d: %v", i, sw.Stops[i])
		}
		if sw.Loose[i] == nil || sw.Loose[i].Kind != RopeSlack {
			t.Errorf("position %d: loose %v, want a slack rope on the way down", i, sw.Loose[i])
		}
		near(t, "lower, N", sw.Lower[i], 0, 0)
		near(t, "lift over hold, N", sw.Lift[i]/sw.Hold[i], (mass*Gravity+drag)/(mass*Gravity), 1e-9)
	}
}
