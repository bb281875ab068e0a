package reference

import (
	"math"
	"strings"
	"sync"
)

// Arm is a muscle's moment arm about a joint as a polynomial of the joint
// angle: positive where the muscle shortens as the angle grows.
type Arm struct {
	Muscle     string
	Coordinate string     // "elbow flexion" or "shoulder flexion"
	coef       [6]float64 // m, m/rad, m/rad², ...
	Valid      string     // the range its publication or its copies give, in their words
	Source     Source
}

// At returns the moment arm in metres at the joint angle (rad). The elbow
// polynomials hold from straight to 140° and are held level beyond.
func (a Arm) At(angle float64) float64 {
	x := min(max(angle, 0), 140*math.Pi/180)
	r := 0.0
	for i := len(a.coef) - 1; i >= 0; i-- {
		r = r*x + a.coef[i]
	}
	return r
}

// ArmOf returns a muscle's moment arm from the publication whose reference
// starts with author, and whether the table has it.
//
// For the elbow four sets agree within about 15 % at 90° and 20 to 30 % at 30
// to 60°. Rankin & Neptune must be kept between 20 and 100°.
func ArmOf(author, muscle, coordinate string) (Arm, bool) {
	for _, a := range arms() {
		if a.Muscle == muscle && a.Coordinate == coordinate && strings.HasPrefix(a.Source.Text, author) {
			return a, true
		}
	}
	return Arm{}, false
}

var arms = sync.OnceValue(func() []Arm {
	metres := map[string]float64{"mm": 1e-3, "cm": 1e-2, "m": 1}
	var out []Arm
	for _, r := range rows("moment_arms.csv") {
		a := Arm{Muscle: r.text("muscle"), Coordinate: r.text("coordinate"), Valid: r.text("valid_deg"), Source: r.source()}
		k, perRad := metres[r.text("unit")], 1.0
		if r.text("angle_unit") == "deg" {
			perRad = 180 / math.Pi
		}
		for i, c := range []string{"c0", "c1", "c2", "c3", "c4", "c5"} {
			a.coef[i] = k * r.number(c)
			k *= perRad
		}
		out = append(out, a)
	}
	return out
})

// Tendon is the change of a muscle's length with one joint's angle, as a
// fraction of the segment its publication measures in.
type Tendon struct {
	l      [3]float64 // 1, 1/deg, 1/deg²
	offset float64    // deg added to the joint angle
	Of     string     // "shank" or "thigh"
	Source Source
}

// Length returns the change of length over segment length at the joint angle
// (rad): hip flexion, knee flexion or ankle dorsiflexion. Only differences
// mean anything.
//
// In the ankle rows the published angle is 90° with the foot square. That it
// grows with dorsiflexion is read from the sign: calf muscles lengthen then.
func (t Tendon) Length(angle float64) float64 {
	x := angle*180/math.Pi + t.offset
	return t.l[0] + x*(t.l[1]+x*t.l[2])
}

// TendonOf returns the row for a muscle about a joint ("hip", "knee" or
// "ankle") and whether the table has one.
func TendonOf(muscle, joint string) (Tendon, bool) {
	t, ok := tendons()[[2]string{muscle, joint}]
	return t, ok
}

var tendons = sync.OnceValue(func() map[[2]string]Tendon {
	out := make(map[[2]string]Tendon)
	for _, r := range rows("tendon_lengths.csv") {
		const percent = 0.01
		t := Tendon{
			l:  [3]float64{percent * r.number("l0"), percent * r.number("l1_per_deg"), percent * r.number("l2_per_deg2")},
			Of: strings.TrimPrefix(r.text("unit"), "percent of "), Source: r.source(),
		}
		if strings.HasPrefix(r.text("angle"), "angle 90 +") {
			t.offset = 90
		}
		out[[2]string{r.text("muscle"), r.text("joint")}] = t
	}
	return out
})
