package profile

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"
)

const rounds = 100

func mapForce(c Curve, f func(float64) float64) Curve {
	c = c.Clone()
	for _, col := range [][]float64{c.Hold, c.Lift, c.Lower} {
		for i := range col {
			col[i] = f(col[i])
		}
	}
	return c
}

// Doubling the load doubles forces and work and leaves places and ratios.
func TestScalingForce(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 4))
	for range rounds {
		c, k := randomCurve(rng, 4+rng.IntN(80)), 0.1+5*rng.Float64()
		was, is := mustRead(t, c), mustRead(t, mapForce(c, func(f float64) float64 { return k * f }))
		for _, q := range All() {
			want := was.Value(q)
			if q.Unit() == "N" || q.Unit() == "J" {
				want *= k
			}
			near(t, q.String(), is.Value(q), want, 1e-9*(1+math.Abs(want)), q.Unit())
		}
		if is.Loads != was.Loads {
			t.Errorf("loads %v after scaling, %v before", is.Loads, was.Loads)
		}
	}
}

// Run backwards, the lengthened and the shortened third change places.
func TestReversing(t *testing.T) {
	rng := rand.New(rand.NewPCG(5, 6))
	for range rounds {
		c := randomCurve(rng, 4+rng.IntN(80))
		back := c.Clone()
		for _, col := range [][]float64{back.Travel, back.Hold, back.Lift, back.Lower} {
			slices.Reverse(col)
		}
		for i, s := range back.Travel {
			back.Travel[i] = c.Length() - s
		}
		was, is := mustRead(t, c), mustRead(t, back)
		for _, pair := range [][2]Reading{
			{Work, Work}, {Mean, Mean}, {MeanByWork, MeanByWork}, {Flatness, Flatness},
			{StartForce, EndForce}, {EndForce, StartForce}, {PeakForce, PeakForce}, {LeastForce, LeastForce},
			{LengthenedMean, ShortenedMean}, {MiddleMean, MiddleMean}, {ShortenedShare, LengthenedShare}, {Lost, Lost},
		} {
			near(t, pair[0].String(), is.Value(pair[0]), was.Value(pair[1]), 1e-9*(1+was.Peak.Force), pair[0].Unit())
		}
		near(t, "peak place", is.Peak.Travel, c.Length()-was.Peak.Travel, 1e-9, "m")
	}
}

// A constant force on top moves every force by itself, the work by itself
// times the travel, and leaves places and deviations.
func TestAddingConstant(t *testing.T) {
	rng := rand.New(rand.NewPCG(7, 8))
	for range rounds {
		c, k := randomCurve(rng, 4+rng.IntN(80)), 200*rng.Float64()
		was, is := mustRead(t, c), mustRead(t, mapForce(c, func(f float64) float64 { return f + k }))
		for _, q := range []Reading{StartForce, EndForce, PeakForce, LeastForce, Mean, LengthenedMean, MiddleMean, ShortenedMean} {
			near(t, q.String(), is.Value(q), was.Value(q)+k, 1e-9*(1+was.Value(q)+k), "N")
		}
		near(t, "work", is.Work, was.Work+k*c.Length(), 1e-9, "J")
		near(t, "lost", is.Lost, was.Lost, 1e-9, "J")
		near(t, "deviation", is.Variation()*is.Mean, was.Variation()*was.Mean, 1e-8, "N")
		near(t, "peak place", is.Peak.Share, was.Peak.Share, 1e-8, "")
	}
}

// A further position on the straight line between two others adds nothing to
// any integral.
func TestMorePositionsOnTheSameLine(t *testing.T) {
	rng := rand.New(rand.NewPCG(9, 10))
	for range rounds {
		c := randomCurve(rng, 4+rng.IntN(40))
		fine := c.Clone()
		i, w := 1+rng.IntN(len(c.Travel)-1), 0.1+0.8*rng.Float64()
		insert := func(col []float64) []float64 { return slices.Insert(col, i, col[i-1]+w*(col[i]-col[i-1])) }
		fine.Travel, fine.Hold, fine.Lift = insert(fine.Travel), insert(fine.Hold), insert(fine.Lift)
		fine.Lower, fine.Load = insert(fine.Lower), insert(fine.Load)
		was, is := mustRead(t, c), mustRead(t, fine)
		for q := Work; q < readingCount; q++ {
			if q != PeakToStart {
				near(t, q.String(), is.Value(q), was.Value(q), 1e-9*(1+math.Abs(was.Value(q))), q.Unit())
			}
		}
	}
}

// Means lie between the least force and the peak, flatness at most at 1.
func TestBounds(t *testing.T) {
	rng := rand.New(rand.NewPCG(11, 12))
	for range rounds {
		r := mustRead(t, randomCurve(rng, 2+rng.IntN(80)))
		if !(r.Least.Force <= r.Mean && r.Mean <= r.MeanByWork && r.MeanByWork <= r.Peak.Force && r.Flatness <= 1) {
			t.Errorf("out of order: least %g, mean %g, by work %g, peak %g N, flatness %g",
				r.Least.Force, r.Mean, r.MeanByWork, r.Peak.Force, r.Flatness)
		}
	}
}

// Two roads: the derivative of every reading against the central difference of
// the reading itself, with forces, travel and load all moving and gaps in it.
func TestDerivativesAgainstDifferences(t *testing.T) {
	rng := rand.New(rand.NewPCG(13, 14))
	noise := func(n int, size float64) []float64 {
		d := make([]float64, n)
		for i := range d {
			d[i] = size * (rng.Float64() - 0.5)
		}
		return d
	}
	for range rounds {
		n := 5 + rng.IntN(60)
		c := randomCurve(rng, n)
		if rng.IntN(2) == 0 {
			c.Gap = make([]Reason, n)
			c.Gap[1+rng.IntN(n-2)] = DeadPoint
		}
		d := Partial{noise(n, 0.5), noise(n, 100), noise(n, 100), noise(n, 100), noise(n, 1)}
		d.Travel[0] = 0
		const h = 1e-6
		moved := func(by float64) outcome {
			m := c.Clone()
			for _, col := range [][2][]float64{{m.Travel, d.Travel}, {m.Hold, d.Hold}, {m.Lift, d.Lift}, {m.Lower, d.Lower}, {m.Load, d.Load}} {
				for i := range col[0] {
					col[0][i] += by * col[1][i]
				}
			}
			o, err := read(m, Partial{}, Holding)
			if err != nil {
				t.Fatal(err)
			}
			return o
		}
		o, err := read(c, d, Holding)
		if err != nil {
			t.Fatal(err)
		}
		high, low := moved(h), moved(-h)
		for _, q := range All() {
			want := (high.values[q].v - low.values[q].v) / (2 * h)
			near(t, "d "+q.String(), o.values[q].d, want, 1e-4*(1+math.Abs(want)), q.Unit())
		}
	}
}

// No number that is not one leaves the package, whatever the forces, gaps and
// spacings within what Check allows.
func TestNothingButNumbersComesOut(t *testing.T) {
	rng := rand.New(rand.NewPCG(15, 16))
	forces := []float64{0, 0, 1, -1, 100, -100, 1e-300, 1e12, -1e12}
	steps := []float64{2e-9, 1e-3, 0.1, 1e6}
	for range 2000 {
		n := 2 + rng.IntN(8)
		c := Curve{Travel: make([]float64, n), Hold: make([]float64, n), Load: make([]float64, n), Gap: make([]Reason, n)}
		for i := range n {
			if i > 0 {
				c.Travel[i] = c.Travel[i-1] + steps[rng.IntN(len(steps))]
			}
			c.Hold[i], c.Load[i] = forces[rng.IntN(len(forces))], forces[rng.IntN(len(forces))]
			c.Gap[i] = Reason(max(0, rng.IntN(6)-2))
		}
		r, err := Read(c, Holding)
		if err != nil {
			continue
		}
		for _, q := range All() {
			if v := r.Value(q); math.IsNaN(v - v) {
				t.Fatalf("%v is %g for %+v", q, v, c)
			}
		}
		for _, v := range c.LiftRatios(nil) {
			if math.IsNaN(v - v) {
				t.Fatalf("lift ratio %g for %+v", v, c)
			}
		}
		d, err := Compare(c, mapForce(c, func(f float64) float64 { return f / 3 }), Holding)
		if err != nil || math.IsNaN(d.OnShare.Shape+d.OnShare.Mean.A+d.OnTravel.Mean.B+d.OnShare.Covered) {
			t.Fatalf("comparison %+v, %v", d, err)
		}
	}
}
