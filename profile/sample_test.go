package profile

import (
	"context"
	"errors"
	"fmt"
	"math"
	"reflect"
	"testing"

	"gonum.org/v1/gonum/stat"
	"gonum.org/v1/gonum/stat/distuv"
)

func mustSample(t *testing.T, ms []Measurement, f Evaluate, o Sampling) *Band {
	t.Helper()
	b, err := Sampled(context.Background(), Holding, ms, f, o)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// cut returns the p quantile of the normal distribution cut at ±3, in standard
// deviations of the uncut one: from Φ(x) = Φ(-3) + p (1 - 2Φ(-3)).
func cut(p float64) float64 {
	tail := distuv.UnitNormal.CDF(-3)
	return distuv.UnitNormal.Quantile(tail + p*(1-2*tail))
}

// Draws have the mean and, the cut allowed for, the deviation they should: a
// normal distribution cut at ±3 has variance 1 - 2·3φ(3)/(1 - 2Φ(-3)) = 0.9733
// (N. L. Johnson, S. Kotz, N. Balakrishnan, Continuous Univariate
// Distributions, vol. 1, 2nd ed., 1994, section 13.10.1, from memory).
func TestDraws(t *testing.T) {
	ms := make([]Measurement, 20)
	for j := range ms {
		ms[j] = Measurement{Name: fmt.Sprint(j), Value: float64(j), Spread: 2, Unit: "m"}
	}
	batch, err := draws(ms, 2000, 7)
	if err != nil {
		t.Fatal(err)
	}
	column := func(j int) []float64 {
		x := make([]float64, 2000)
		for i := range x {
			x[i] = batch.At(i, j)
		}
		return x
	}
	phi3 := math.Exp(-4.5) / math.Sqrt(2*math.Pi)
	sd := math.Sqrt(1 - 6*phi3/(1-2*distuv.UnitNormal.CDF(-3)))
	for j, m := range ms {
		mean, got := stat.MeanStdDev(column(j), nil)
		near(t, "mean", mean, m.Value, 0.01, "m")
		near(t, "deviation", got, sd, 0.02, "m")
		for _, x := range column(j) {
			if math.Abs(x-m.Value) > 3+1e-9 {
				t.Fatalf("draw %g m lies beyond 3 standard uncertainties of %g m", x, m.Value)
			}
		}
		if j > 0 {
			near(t, "correlation with the one before", stat.Correlation(column(j), column(j-1), nil), 0, 0.06, "")
		}
	}
}

// JCGM 101:2008, 9.2.2: the sum of four standard normal quantities has
// standard uncertainty 2.0 and the 95 % interval ±3.92 (from memory). With k =
// 2 our linear ± is 4.0; the cut at 3 narrows the drawn interval by √0.9733.
func TestAdditiveModel(t *testing.T) {
	ms := make([]Measurement, 4)
	for j := range ms {
		ms[j] = Measurement{Name: string(rune('A' + j)), Spread: 2, Unit: "N"}
	}
	f := func(x []float64, _ int) (Curve, error) {
		return over(1, 5, func(float64) float64 { return 500 + x[0] + x[1] + x[2] + x[3] }), nil
	}
	c, ds, err := Differentiate(ms, f)
	if err != nil {
		t.Fatal(err)
	}
	linear := mustLinear(t, c, ms, ds)
	drawn := mustSample(t, ms, f, Sampling{Draws: 4000})
	for i := range linear.Share {
		near(t, "linear", linear.Between[i].Half(), 4, 1e-9, "N")
		near(t, "drawn", drawn.Between[i].Half(), 3.92*math.Sqrt(0.9733), 0.08, "N")
		near(t, "middle", drawn.Between[i].Low+drawn.Between[i].High, 1000, 0.2, "N")
	}
}

// Where the curve follows the measurements in straight lines both bands are
// one, but for the factor between k = 2 and the 97.5 % quantile, which lies
// between cut(0.975)/2 for one measurement and 1.96·0.9866/2 for many.
func TestBandsAgreeOnLever(t *testing.T) {
	const n = 101
	ms, values := leverMeasurements, stated(leverMeasurements)
	linear := mustLinear(t, lever(values, n), ms, leverPartials(values, n))
	drawn := mustSample(t, ms, func(v []float64, _ int) (Curve, error) { return lever(v, n), nil }, Sampling{Draws: 4000})
	factor := cut(0.975) / 2
	for i := range linear.Share {
		want := factor * linear.Between[i].Half()
		near(t, "half width", drawn.Between[i].Half(), want, 0.04*want, "N")
	}
	for _, q := range []Reading{
		StartForce, EndForce, PeakForce, PeakShare, LeastForce, Work, Mean, MeanByWork, Flatness, PeakToStart,
		LengthenedMean, MiddleMean, ShortenedMean, LengthenedShare, MiddleShare, ShortenedShare, LiftRatio, WorkUp, Length,
	} {
		want := factor * linear.Reading(q).Half()
		near(t, "± of "+q.String(), drawn.Reading(q).Half(), want, 0.05*want+1e-12, q.Unit())
	}
}

// toggle is a pair of links near their dead point: the force that holds 100 N
// is 100/sin α, with α from 6° to 60°, read with an offset.
func toggle(x []float64, _ int) (Curve, error) {
	const degree = math.Pi / 180
	if 6*degree+x[0] <= 0 {
		return Curve{}, errors.New("the links pass their dead point")
	}
	return over(0.5, 21, func(u float64) float64 { return 100 / math.Sin((6+54*u)*degree+x[0]) }), nil
}

// Near the dead point the two bands part. The force falls steadily with the
// offset, so that the quantiles of the force are the forces at the offset's
// quantiles: 100/sin(α ± 1.94·½ spread), far from symmetric at 6° ± 4° and
// nearly so at 60°. The linear band there even falls short by half.
func TestBandsPartAtDeadPoint(t *testing.T) {
	const degree = math.Pi / 180
	ms := []Measurement{{"angle offset", 0, 4 * degree, "rad"}}
	c, ds, err := Differentiate(ms, toggle)
	if err != nil {
		t.Fatal(err)
	}
	linear := mustLinear(t, c, ms, ds)
	drawn := mustSample(t, ms, toggle, Sampling{})
	if drawn.Failed != 0 { // 6° is just the 3 standard uncertainties of 2°
		t.Errorf("%d draws failed", drawn.Failed)
	}
	z := cut(0.975) * 2 * degree
	for _, i := range []int{0, 10, 20} {
		alpha := (6 + 54*float64(i)/20) * degree
		low, high := 100/math.Sin(alpha+z), 100/math.Sin(alpha-z)
		near(t, "low", drawn.Between[i].Low, low, 0.01*low, "N")
		near(t, "high", drawn.Between[i].High, high, 0.02*high, "N")
	}
	if got := linear.Between[0].High; got > 0.7*drawn.Between[0].High {
		t.Errorf("linear band reaches %g N at the dead point, drawn %g N; they should part", got, drawn.Between[0].High)
	}
	near(t, "far from it they agree", drawn.Between[20].High, linear.Between[20].High, 0.01*linear.Between[20].High, "N")
}

// With 6° ± 8° the machine cannot be assembled where the offset is below -6°,
// 1.5 standard uncertainties: Φ(-1.5) less the cut tail.
func TestFailuresAreCounted(t *testing.T) {
	ms := []Measurement{{"angle offset", 0, 8 * math.Pi / 180, "rad"}}
	b := mustSample(t, ms, toggle, Sampling{Draws: 4000})
	tail := distuv.UnitNormal.CDF(-3)
	want := (distuv.UnitNormal.CDF(-1.5) - tail) / (1 - 2*tail)
	near(t, "failed", float64(b.Failed)/4000, want, 2e-3, "")
	if b.First == nil || b.First.Err == nil || b.First.Values[0] > -6*math.Pi/180 {
		t.Errorf("first failure %+v", b.First)
	}
}

func TestSampledRefuses(t *testing.T) {
	broken := errors.New("the links cannot meet")
	ms := []Measurement{{"link", 1, 0.1, "m"}}
	calls := 0
	_, err := Sampled(context.Background(), Holding, ms, func(v []float64, _ int) (Curve, error) {
		if calls++; calls > 1 {
			return Curve{}, broken
		}
		return over(1, 3, func(float64) float64 { return 1 }), nil
	}, Sampling{Draws: 100, Workers: 1})
	var few *FewDrawsError
	if !errors.As(err, &few) || few.Failed != 100 || !errors.Is(err, broken) {
		t.Errorf("got %v, want a FewDrawsError of 100 that keeps its cause", err)
	}
	_, err = Sampled(context.Background(), Holding, ms, func([]float64, int) (Curve, error) { return Curve{}, broken }, Sampling{})
	if !errors.Is(err, broken) {
		t.Errorf("stated values: got %v", err)
	}
}

// A draw in which the end of the travel is slack is missing there and nowhere
// else.
func TestPresent(t *testing.T) {
	ms := []Measurement{{"rope length", 0, 2, "m"}}
	b := mustSample(t, ms, func(v []float64, _ int) (Curve, error) {
		c := over(1, 11, func(u float64) float64 { return 100 + v[0] })
		c.Gap = make([]Reason, 11)
		if v[0] > 1 { // one standard uncertainty
			c.Gap[10] = Slack
		}
		return c, nil
	}, Sampling{Draws: 4000})
	tail := distuv.UnitNormal.CDF(-3)
	near(t, "present at the end", b.Present[10], (distuv.UnitNormal.CDF(1)-tail)/(1-2*tail), 2e-3, "")
	near(t, "present before it", b.Present[9], 1, 0, "")
}

func TestSameBandForAnyNumberOfWorkers(t *testing.T) {
	f := func(v []float64, _ int) (Curve, error) {
		if v[0] > 0.81 {
			return Curve{}, errors.New("too long")
		}
		return lever(v, 21), nil
	}
	one := mustSample(t, leverMeasurements, f, Sampling{Draws: 300, Seed: 5, Workers: 1})
	four := mustSample(t, leverMeasurements, f, Sampling{Draws: 300, Seed: 5, Workers: 4})
	if !reflect.DeepEqual(one, four) {
		t.Error("the band depends on the number of workers")
	}
	other := mustSample(t, leverMeasurements, f, Sampling{Draws: 300, Seed: 6, Workers: 4})
	if reflect.DeepEqual(one.Between, other.Between) {
		t.Error("the band does not depend on the seed")
	}
}

// Each worker may keep its curve in its own memory.
func TestWorkersOwnTheirCurves(t *testing.T) {
	const workers = 3
	own := make([]Curve, workers)
	f := func(v []float64, w int) (Curve, error) {
		c := lever(v, 21)
		if own[w].Travel == nil {
			own[w] = c
			return c, nil
		}
		copy(own[w].Travel, c.Travel)
		copy(own[w].Hold, c.Hold)
		copy(own[w].Load, c.Load)
		return own[w], nil
	}
	fresh := func(v []float64, _ int) (Curve, error) { return lever(v, 21), nil }
	got := mustSample(t, leverMeasurements, f, Sampling{Draws: 200, Workers: workers})
	want := mustSample(t, leverMeasurements, fresh, Sampling{Draws: 200, Workers: 1})
	if !reflect.DeepEqual(got, want) {
		t.Error("curves from a worker's own memory give another band")
	}
}

func TestProgressAndCancel(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	defer cancel()
	last, calls := 0, 0
	f := func(v []float64, _ int) (Curve, error) { return lever(v, 5), nil }
	o := Sampling{Draws: 1000, Workers: 4, Progress: func(done, total int) {
		if done <= last || total != 1000 {
			t.Errorf("progress %d of %d after %d", done, total, last)
		}
		last = done
		calls++
	}}
	if _, err := Sampled(ctx, Holding, leverMeasurements, f, o); err != nil || last != 1000 || calls != 100 {
		t.Errorf("%v, told %d times up to %d", err, calls, last)
	}
	o.Progress = func(done, total int) {
		if done >= 100 {
			cancel()
		}
	}
	b, err := Sampled(ctx, Holding, leverMeasurements, f, o)
	if b != nil || !errors.Is(err, context.Canceled) {
		t.Errorf("got %v, want canceled", err)
	}
}
