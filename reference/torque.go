package reference

import (
	"math"
	"sync"
)

// AgeGroup is one of the three groups of the torque table.
type AgeGroup int

const (
	Young  AgeGroup = iota // 18 to 25 years
	Middle                 // 55 to 65 years
	Old                    // over 65 years
)

var ageGroups = map[string]AgeGroup{"18-25": Young, "55-65": Middle, "over65": Old}

// TorqueRow holds the coefficients that give the joint moment a person can
// produce at the hip, knee or ankle against joint angle and speed.
//
// Source: Anderson, Madigan & Nussbaum 2007, J Biomech 40:3105-3113, Table 3.
// The coefficients were retrieved; the equations are from memory and were
// checked by algebra: the concentric form is 0.75 at C4 and 0.50 at C5, which
// is what C4 and C5 are said to be.
//
// Angles: hip and knee flexion and ankle dorsiflexion positive, zero with the
// leg straight and the foot square. Tested: hip -29 to 74°, knee 0 to 103°,
// ankle -34 to 29°. A few people in each group, one leg at a time (from
// memory).
//
// Two choices between copies: young men's plantarflexion C3 is +0.408, not
// -0.408, because the strongest plantarflexion belongs in a dorsiflexed ankle;
// young men's knee extension C3 is 1.133, not 1.135 (0.1° apart).
type TorqueRow struct {
	C1 float64 // peak isometric moment over body weight (N) times stature (m)
	C2 float64 // 1/rad, narrowness of the angle curve
	C3 float64 // rad, angle of the peak
	C4 float64 // rad/s, concentric speed at which 0.75 of the moment is left
	C5 float64 // rad/s, concentric speed at which 0.50 is left
	C6 float64 // s/rad, eccentric rise
	// Passive moment B1·exp(k1·θ) + B2·exp(k2·θ), N·m, positive in the sense of
	// the action. Means of fitted exponents do not make a mean curve: young
	// men's hip rows give over 1000 N·m at 74° of flexion, where women's give
	// 37. The rest of the project leaves the passive part out for that reason.
	B1, K1, B2, K2 float64
	Source         Source
}

// Tested is the range of angles in which a joint of the torque table was
// tested, rad, from one retrieved copy.
func Tested(joint string) (from, to float64) {
	switch joint {
	case "hip":
		return -0.5, 1.3
	case "knee":
		return 0, 1.8
	case "ankle":
		return -0.6, 0.5
	}
	panic("reference: the torque table has no joint " + joint)
}

// Torque returns mean and standard deviation of the coefficients of an action
// such as "hip", "extension". It panics for an action the table does not have
// and for [Unstated].
func Torque(joint, action string, sex Sex, group AgeGroup) (mean, sd TorqueRow) {
	m, ok := torques()[torqueKey{joint, action, sex, group, "mean"}]
	if !ok {
		panic("reference: the torque table has no " + joint + " " + action)
	}
	return m, torques()[torqueKey{joint, action, sex, group, "sd"}]
}

// Isometric returns the moment (N·m, one leg) at joint angle theta (rad) for a
// person of weight w (N) and stature h (m):
//
//	T0 = C1·w·h·cos(C2·(θ - C3)),  0 where the cosine is not positive
func (r TorqueRow) Isometric(theta, w, h float64) float64 {
	phase := r.C2 * (theta - r.C3)
	if math.Abs(phase) >= math.Pi/2 {
		return 0
	}
	return r.C1 * w * h * math.Cos(phase)
}

// Concentric returns the share of the isometric moment left at the shortening
// speed omega (rad/s, >= 0):
//
//	f = (2·C4·C5 + ω·(C5 - 3·C4)) / (2·C4·C5 + ω·(2·C5 - 4·C4)),  at least 0
//
// Where C5 > 3·C4, as in plantarflexion, f levels off instead of reaching 0;
// do not use it beyond about 8 rad/s.
func (r TorqueRow) Concentric(omega float64) float64 {
	p := 2 * r.C4 * r.C5
	return max(0, (p+omega*(r.C5-3*r.C4))/(p+omega*(2*r.C5-4*r.C4)))
}

type torqueKey struct {
	joint, action string
	sex           Sex
	group         AgeGroup
	stat          string
}

var torques = sync.OnceValue(func() map[torqueKey]TorqueRow {
	out := make(map[torqueKey]TorqueRow)
	for _, r := range rows("torque_angle_velocity.csv") {
		k := torqueKey{r.text("joint"), r.text("action"), parseSex(r.text("sex")), ageGroups[r.text("age")], r.text("stat")}
		out[k] = TorqueRow{
			C1: r.number("c1"), C2: r.number("c2_per_rad"), C3: r.number("c3_rad"),
			C4: r.number("c4_rad_per_s"), C5: r.number("c5_rad_per_s"), C6: r.number("c6_s_per_rad"),
			B1: r.number("b1_nm"), K1: r.number("k1_per_rad"), B2: r.number("b2_nm"), K2: r.number("k2_per_rad"),
			Source: r.source(),
		}
	}
	return out
})
