package reference

import (
	"math"
	"sync"
)

// Regression is a static strength regression: mean joint moment against the
// included joint angle (straight = π) and the shoulder's flexion.
//
// Source: joint-moment strength prediction table in Chaffin, Andersson &
// Martin, Occupational Biomechanics (from Stobbe 1982, Schanne 1972, Burggraaf
// 1972), from memory. It agrees with the separately remembered medians of
// Stobbe within 20 % except for elbow extension (65 against 46 N·m).
type Regression struct {
	c      [4]float64 // of the included angle in degrees
	cs     float64    // of the shoulder's flexion in degrees
	g      map[Sex]float64
	Note   string // why a row is not to be used, if so
	Source Source
}

// Moment returns the mean moment in N·m for women or men at the included joint
// angle and the shoulder flexion from hanging, both rad.
func (r Regression) Moment(sex Sex, included, shoulder float64) float64 {
	a, s := included*180/math.Pi, shoulder*180/math.Pi
	return r.g[sex] * (r.c[0] + a*(r.c[1]+a*(r.c[2]+a*r.c[3])) + r.cs*s)
}

// RegressionOf returns the regression of an action such as "elbow flexion" and
// whether the table has one.
func RegressionOf(action string) (Regression, bool) {
	r, ok := regressions()[action]
	return r, ok
}

var regressions = sync.OnceValue(func() map[string]Regression {
	out := make(map[string]Regression)
	for _, r := range rows("static_regressions.csv") {
		out[r.text("action")] = Regression{
			c:    [4]float64{r.number("c0"), r.number("c1_per_deg"), r.number("c2_per_deg2"), r.number("c3_per_deg3")},
			cs:   r.number("c_shoulder_per_deg"),
			g:    map[Sex]float64{Male: r.number("g_male_nm"), Female: r.number("g_female_nm")},
			Note: r.text("note"), Source: r.source(),
		}
	}
	return out
})
