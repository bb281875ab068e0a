package exercise

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"steelyard/mechanism"
	"steelyard/reference"
)

// TestCourseIsTheMachines sets our gait against the stroke that package
// mechanism plays.
func TestCourseIsTheMachines(t *testing.T) {
	r, sw := freely(t, Curl, Dumbbell, 10, 11, Options{})
	tempo := mechanism.Tempo{Up: 1.2, Down: 2.5}
	stroke, err := r.Setup.model.Stroke(sw, tempo, 371)
	if err != nil {
		t.Fatal(err)
	}
	whole := sw.Travel[sw.Len()-1]
	for i, s := range stroke.Travel {
		v, _ := gait(s/whole, whole, &tempo, stroke.Sense[i] == mechanism.Lower)
		if stroke.Sense[i] != mechanism.Hold && math.Abs(v-stroke.Speed[i]) > 1e-6 {
			t.Errorf("%.3f s: %.7f m/s, want %.7f", stroke.Time[i], v, stroke.Speed[i])
		}
	}
}

// TestForearmSwings: a curl is a forearm turning about a fixed elbow, so the
// moment of inertia about it times the angular acceleration comes on top of the
// weights.
func TestForearmSwings(t *testing.T) {
	const kg = 10
	tempo := &mechanism.Tempo{Up: 0.8, Down: 1.5}
	still, sw := freely(t, Curl, Dumbbell, kg, 21, Options{})
	moving, _ := freely(t, Curl, Dumbbell, kg, 21, Options{Tempo: tempo})
	b := still.Body
	forearm, hand := b.Segment(reference.SegForearm), b.Segment(reference.SegHand)
	arm := b.Links.ElbowToGrip
	at := b.Links.Forearm + hand.Centre
	inertia := kg*arm*arm + forearm.Sideways + forearm.Mass*forearm.Centre*forearm.Centre + hand.Sideways + hand.Mass*at*at
	whole := sw.Travel[sw.Len()-1]
	for i, s := range sw.Travel {
		if i == 0 || i == sw.Len()-1 {
			continue // there the stencil lies a little inside the travel
		}
		_, a := gait(s/whole, whole, tempo, false)
		extra := moving.Lifting.Column(Elbow).Moment[i] - still.Lifting.Column(Elbow).Moment[i]
		if want := inertia * a / arm; math.Abs(extra-want) > 1e-5*(1+math.Abs(want)) {
			t.Errorf("%d: inertia asks %.7f N·m, want %.7f", i, extra, want)
		}
	}
}

// TestStencilAgainstCircle: the angular velocity and acceleration of a segment
// that turns about a fixed axis, in closed form.
func TestStencilAgainstCircle(t *testing.T) {
	r, _ := freely(t, Curl, Dumbbell, 10, 11, Options{})
	s, b := r.Setup, r.Body
	c, ok := s.around(b, s.model.NewState(), 5)
	if !ok {
		t.Fatal("not placed")
	}
	const v, a = 0.7, -1.3
	p := c.pace(s, b, v, a, 1)
	arm := b.Links.ElbowToGrip
	for _, w := range []struct {
		name      string
		got, want r3.Vec
		tol       float64
	}{
		{"forearm turns", p.chain[1].omega, r3.Vec{Z: v / arm}, 1e-8},
		{"forearm speeds up", p.chain[1].alpha, r3.Vec{Z: a / arm}, 1e-6},
		{"upper arm rests", p.chain[0].omega, r3.Vec{}, 1e-8},
	} {
		if d := r3.Norm(r3.Sub(w.got, w.want)); d > w.tol {
			t.Errorf("%s: got %v, want %v, off by %.2g", w.name, w.got, w.want, d)
		}
	}
	if got := p.speeds[Elbow]; math.Abs(got-v/arm) > 1e-8 {
		t.Errorf("elbow bends at %.10f rad/s, want %.10f", got, v/arm)
	}
	// The hand: v²/r towards the elbow and a along the way.
	in := r3.Scale(-v*v/(arm*arm), r3.Sub(r.Placements[5].Contact, r.Placements[5].Limb.Mid))
	want := r3.Add(in, r3.Scale(a, r.Placements[5].Path))
	if d := r3.Norm(r3.Sub(p.grip, want)); d > 1e-6 {
		t.Errorf("hand: got %v, want %v, off by %.2g m/s²", p.grip, want, d)
	}
}

// TestSlowTempoIsRest: a repetition of a minute each way asks what holding does,
// but for the little that speed takes from strength.
func TestSlowTempoIsRest(t *testing.T) {
	r, _ := freely(t, ChestPress, Dumbbell, 12, 11, Options{Tempo: &mechanism.Tempo{Up: 60, Down: 60}})
	for i := range r.Travel {
		for k := range r.Lifting.Joints {
			got, want := r.Lifting.Joints[k].Moment[i], r.Still.Joints[k].Moment[i]
			if math.Abs(got-want) > 0.01*(1+math.Abs(want)) {
				t.Errorf("%v %d: %.4f N·m, held %.4f", r.Lifting.Joints[k].Joint, i, got, want)
			}
		}
	}
}
