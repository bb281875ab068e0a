package profile

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/integrate"
)

// Closed forms over a travel of 0.6 m, in multiples of 300 N. With u the share
// of the travel: means ∫F du and ∫F²du/∫F du, flatness 1 - √(∫F²du/(∫F du)² - 1)
// and shares of the work over the thirds, integrated by hand.
func TestClosedForms(t *testing.T) {
	const length, scale = 0.6, 300.0

	// For 1 - v², v = u - 0.37: ∫ = (b-a) - [v³/3] and ∫F² = [v - 2v³/3 + v⁵/5].
	power := func(p, a, b float64) float64 { return (math.Pow(b-0.37, p) - math.Pow(a-0.37, p)) / p }
	area := func(a, b float64) float64 { return b - a - power(3, a, b) }
	whole, square := area(0, 1), 1-2*power(3, 0, 1)+power(5, 0, 1)

	tests := []struct {
		name   string
		f      func(u float64) float64
		tol    float64 // relative; the trapezoidal rule's h²/12 max|F″| where the curve bends
		mean   float64
		byWork float64
		flat   float64
		shares [3]float64
		peak   Point
		least  Point
		loads  Where
	}{
		{"constant", func(u float64) float64 { return 1 }, 1e-12,
			1, 1, 1, [3]float64{1. / 3, 1. / 3, 1. / 3}, Point{Share: 0, Force: 1}, Point{Share: 0, Force: 1}, Evenly},
		{"rising line", func(u float64) float64 { return u }, 1e-12,
			1. / 2, 2. / 3, 1 - math.Sqrt(1./3), [3]float64{1. / 9, 3. / 9, 5. / 9}, Point{Share: 1, Force: 1}, Point{}, AtEnd},
		{"falling line", func(u float64) float64 { return 1 - u/2 }, 1e-12,
			3. / 4, 7. / 9, 1 - math.Sqrt(7./12/(9./16)-1), [3]float64{11. / 27, 9. / 27, 7. / 27},
			Point{Share: 0, Force: 1}, Point{Share: 1, Force: 0.5}, AtStart},
		{"half sine", func(u float64) float64 { return math.Sin(math.Pi * u) }, 1e-4,
			2 / math.Pi, math.Pi / 4, 1 - math.Sqrt(math.Pi*math.Pi/8-1), [3]float64{1. / 4, 1. / 2, 1. / 4},
			Point{Share: 0.5, Force: 1}, Point{}, AtMiddle},
		{"parabola", func(u float64) float64 { return 1 - (u-0.37)*(u-0.37) }, 1e-4,
			whole, square / whole, 1 - math.Sqrt(square/whole/whole-1),
			[3]float64{area(0, 1./3) / whole, area(1./3, 2./3) / whole, area(2./3, 1) / whole},
			Point{Share: 0.37, Force: 1}, Point{Share: 1, Force: 1 - 0.63*0.63}, AtMiddle},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			r := mustRead(t, over(length, 101, func(u float64) float64 { return scale * tt.f(u) }))
			near(t, "mean", r.Mean, scale*tt.mean, scale*tt.tol, "N")
			near(t, "work", r.Work, scale*tt.mean*length, scale*length*tt.tol, "J")
			near(t, "mean by work", r.MeanByWork, scale*tt.byWork, scale*tt.tol, "N")
			near(t, "flatness", r.Flatness, tt.flat, 3*tt.tol, "")
			near(t, "variation", r.Variation(), 1-tt.flat, 3*tt.tol, "")
			for k, s := range tt.shares {
				near(t, "share of work", r.Thirds[k].Share, s, tt.tol, "")
				near(t, "mean of third", r.Thirds[k].Mean, scale*3*s*tt.mean, scale*tt.tol, "N")
				near(t, "third covered", r.Thirds[k].Covered, 1, 1e-12, "")
			}
			near(t, "peak", r.Peak.Force, scale*tt.peak.Force, 1e-6, "N") // a sine's vertex to h⁴
			near(t, "peak place", r.Peak.Share, tt.peak.Share, 1e-9, "")
			near(t, "peak place", r.Peak.Travel, length*tt.peak.Share, 1e-9, "m")
			near(t, "least", r.Least.Force, scale*tt.least.Force, 1e-9, "N")
			near(t, "least place", r.Least.Share, tt.least.Share, 1e-9, "")
			near(t, "length", r.Length, length, 1e-12, "m")
			near(t, "covered", r.Covered, 1, 1e-12, "")
			near(t, "helps", r.Helps, 0, 0, "")
			if r.Loads != tt.loads {
				t.Errorf("loads %v, want %v", r.Loads, tt.loads)
			}
		})
	}
}

// A plate on a lever loads most where its horizontal distance from the axis is
// greatest: at θ = 0, reached the share 0.2/1.2 of the way. There F = mgR/r.
func TestLeverReadings(t *testing.T) {
	r := mustRead(t, lever([]float64{0.8, 0.5, -0.2}, 101))
	top := leverMass * gravity * 0.8 / 0.5
	near(t, "peak", r.Peak.Force, top, 1e-6*top, "N")
	near(t, "peak place", r.Peak.Share, 0.2/1.2, 1e-6, "")
	near(t, "mean", r.Mean, top*(math.Sin(1)-math.Sin(-0.2))/1.2, 2e-5*top, "N")
	near(t, "start", r.Start.Force, top*math.Cos(-0.2), 1e-9, "N")
	near(t, "end", r.End.Force, top*math.Cos(1), 1e-9, "N")
	near(t, "peak to start", r.PeakToStart, 1/math.Cos(0.2), 1e-6, "")
	near(t, "lift ratio", r.LiftRatio, 0.8/0.5, 1e-12, "")
	// Work is the rise of the weight: m g R (sin 1 + sin 0.2).
	near(t, "work", r.WorkUp, leverMass*gravity*0.8*(math.Sin(1)+math.Sin(0.2)), 0.01, "J")
	near(t, "lost", r.Lost, 0, 0, "J")
}

// Constant forces of 110 N up and 90 N down over 0.5 m enclose 10 J.
func TestFrictionLoop(t *testing.T) {
	c := over(0.5, 7, func(u float64) float64 { return 100 })
	c.Lift = over(0.5, 7, func(u float64) float64 { return 110 }).Hold
	c.Lower = over(0.5, 7, func(u float64) float64 { return 90 }).Hold
	r := mustRead(t, c)
	near(t, "up", r.WorkUp, 55, 1e-12, "J")
	near(t, "down", r.WorkDown, 45, 1e-12, "J")
	near(t, "lost", r.Lost, 10, 1e-12, "J")
	near(t, "held", r.Work, 50, 1e-12, "J")
	lift, err := Read(c, Lifting)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "lifting mean", lift.Mean, 110, 1e-12, "N")
}

// The middle fifth of a rising line is slack: what remains is integrated by
// hand, ∫u du over [0, 0.4] and [0.6, 1] = 0.08 + 0.32.
func TestGapIsNotBridged(t *testing.T) {
	c := over(1, 11, func(u float64) float64 { return 100 * u })
	c.Gap = make([]Reason, 11)
	c.Gap[5] = Slack
	c.Hold[5] = 1e6 // must not be used
	r := mustRead(t, c)
	near(t, "covered", r.Covered, 0.8, 1e-12, "")
	near(t, "work", r.Work, 40, 1e-12, "J")
	near(t, "mean", r.Mean, 50, 1e-12, "N")
	near(t, "peak", r.Peak.Force, 100, 0, "N")
	near(t, "middle covered", r.Thirds[Middle].Covered, 0.4, 1e-12, "")
	if r.Loads != Unknown {
		t.Errorf("loads %v, want unknown: less than half of the middle third has a force", r.Loads)
	}
	c.Gap = []Reason{DeadPoint, None, None, None, None, None, None, None, None, None, Slack}
	r = mustRead(t, c)
	near(t, "first force", r.Start.Share, 0.1, 1e-12, "")
	near(t, "last force", r.End.Travel, 0.9, 1e-12, "m")
}

// From +100 N to -50 N the line crosses at 2/3 of the way.
func TestMachineThatHelps(t *testing.T) {
	r := mustRead(t, over(1, 2, func(u float64) float64 { return 100 - 150*u }))
	near(t, "helps", r.Helps, 1./3, 1e-12, "")
	near(t, "work", r.Work, 25, 1e-12, "J")
	r = mustRead(t, over(1, 2, func(u float64) float64 { return -100 }))
	near(t, "helps all the way", r.Helps, 1, 1e-12, "")
	if r.MeanByWork != 0 || r.Flatness != 0 || r.PeakToStart != 0 || r.Loads != Unknown {
		t.Errorf("ratios of negative work: %+v", r)
	}
}

// A machine loads evenly up to a tenth of the mean between its thirds.
func TestEvenRule(t *testing.T) {
	steps := func(a, b, c float64) Curve {
		return over(1, 4000, func(u float64) float64 { return []float64{a, b, c, c}[int(u*3)] })
	}
	for _, tt := range []struct {
		c    Curve
		want Where
	}{
		{steps(104, 100, 96), Evenly},  // 8 % apart
		{steps(106, 100, 94), AtStart}, // 12 % apart
		{steps(94, 106, 100), AtMiddle},
		{steps(94, 100, 106), AtEnd},
		{steps(106, 94, 105), AtStart},
	} {
		if got := mustRead(t, tt.c).Loads; got != tt.want {
			t.Errorf("loads %v, want %v", got, tt.want)
		}
	}
}

// Two roads: our integrals against gonum's trapezoidal rule on the same line.
func TestWorkAgainstTrapezoidal(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 2))
	for range 50 {
		c := randomCurve(rng, 3+rng.IntN(60))
		r := mustRead(t, c)
		want := integrate.Trapezoidal(c.Travel, c.Hold)
		near(t, "work", r.Work, want, 1e-11*want, "J")
		near(t, "work up", r.WorkUp, integrate.Trapezoidal(c.Travel, c.Lift), 1e-11*want, "J")
		near(t, "shares", r.Thirds[0].Share+r.Thirds[1].Share+r.Thirds[2].Share, 1, 1e-12, "")
	}
}

func TestReadingNamesAndFields(t *testing.T) {
	var r Readings
	seen := map[string]bool{}
	for i, q := range All() {
		*r.field(q) = float64(i + 1)
		key := q.String() + " in " + q.Unit()
		if q.String() == "" || q.Unit() == "" || seen[key] {
			t.Errorf("reading %d is called %q", i, key)
		}
		seen[key] = true
	}
	for i, q := range All() { // no two readings share a field
		near(t, q.String(), r.Value(q), float64(i+1), 0, "")
	}
}
