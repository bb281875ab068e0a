package reference

import (
	"math"
	"testing"
)

// Moment arms in mm at 30, 60, 90 and 120° of elbow flexion, evaluated
// separately from the published coefficients.
func TestElbowMomentArms(t *testing.T) {
	for _, c := range []struct {
		author, muscle string
		want           [4]float64
	}{
		{"Pigeon", "biceps brachii", [4]float64{29.1, 41.9, 48.3, 43.4}},
		{"Pigeon", "brachialis", [4]float64{14.0, 23.4, 30.3, 31.5}},
		{"Pigeon", "triceps brachii", [4]float64{-24.9, -21.8, -19.0, -16.2}},
		{"Ramsay", "biceps brachii (pronation angle 0)", [4]float64{27.4, 42.6, 49.3, 42.6}},
		{"Ramsay", "brachialis", [4]float64{13.6, 18.9, 26.9, 31.9}},
		{"Ramsay", "triceps brachii", [4]float64{-26.9, -25.6, -22.2, -18.2}},
		{"Rankin", "triceps medial and lateral", [4]float64{-24.2, -21.1, -19.4, -22.6}},
	} {
		a, ok := ArmOf(c.author, c.muscle, "elbow flexion")
		if !ok {
			t.Errorf("no %s of %s", c.muscle, c.author)
			continue
		}
		for i, want := range c.want {
			deg := float64(30 * (i + 1))
			if got := 1000 * a.At(deg*degree); math.Abs(got-want) > 0.06 {
				t.Errorf("%s, %s at %.0f°: %.2f mm, want %.1f", c.author, c.muscle, deg, got, want)
			}
		}
	}
}

// The moment arm is the slope of length over angle. For a shank of 0.40 m the
// Achilles arm is about 44 mm with the foot square, and the two publications
// agree within a fifth (Grieve 0.1916 %/°, Hawkins & Hull 0.193 and 0.214 %/°).
func TestCalfMomentArm(t *testing.T) {
	slope := func(muscle, joint string) float64 {
		l, ok := TendonOf(muscle, joint)
		if !ok {
			t.Fatalf("no %s at the %s", muscle, joint)
		}
		const h = 1e-4
		return (l.Length(h) - l.Length(-h)) / (2 * h)
	}
	grieve := slope("gastrocnemius", "ankle")
	if arm := 0.40 * grieve * 1000; math.Abs(arm-43.9) > 0.1 {
		t.Errorf("Achilles arm %.1f mm, want 43.9", arm)
	}
	for _, other := range []string{"gastrocnemius medial", "soleus linear"} {
		if r := slope(other, "ankle") / grieve; math.Abs(r-1) > 0.2 {
			t.Errorf("%s over Grieve: %.2f", other, r)
		}
	}
	if slope("gastrocnemius", "knee") >= 0 {
		t.Error("bending the knee must shorten the gastrocnemius")
	}
}
