package profile

import (
	"errors"
	"math"
	"math/rand/v2"
	"testing"
)

// loadedLever has an arm of 30 kg at 0.4 m and plates at 0.9 m, contact at 0.6
// m, so that F = g (30·0.4 + load·0.9)/0.6 cos θ over θ = -0.5 … 0.7.
func loadedLever(n int) Loadable {
	shape := over(0.6*leverSweep, n, func(u float64) float64 { return gravity / 0.6 * math.Cos(-0.5+u*leverSweep) })
	m := Loadable{Travel: shape.Travel, Fixed: make([]float64, n), PerLoad: make([]float64, n)}
	for i, f := range shape.Hold {
		m.Fixed[i], m.PerLoad[i] = f*30*0.4, f*0.9
	}
	return m
}

func plates(step, last float64) (allowed []float64) {
	for i := 0; float64(i)*step <= last; i++ {
		allowed = append(allowed, float64(i)*step)
	}
	return allowed
}

// The closed form of every reading is g (12 + 0.9 load)/0.6 times a shape
// factor, so that the load that doubles the bare machine's reading is 12/0.9
// kg whatever the reading.
func TestMatchDoublesBareMachine(t *testing.T) {
	m := loadedLever(61)
	bare := mustRead(t, m.At(0))
	for _, by := range []Reading{Mean, PeakForce, LengthenedMean, MiddleMean, ShortenedMean} {
		got, err := MatchLoad(2*bare.Value(by), by, m, plates(2.5, 100))
		if err != nil {
			t.Fatal(err)
		}
		near(t, by.String(), got.Load, 12/0.9, 1e-6, "kg")
		near(t, "nearest", got.Nearest, 12.5, 0, "kg") // of 12.5 and 15
		near(t, "with the nearest", got.Got, bare.Value(by)*(12+0.9*12.5)/12, 1e-6, "N")
		if got.Outcome != Matched {
			t.Errorf("%v: outcome %v", by, got.Outcome)
		}
	}
}

func TestMatchOutcomes(t *testing.T) {
	m := loadedLever(61)
	bare := mustRead(t, m.At(0)).Mean
	assist := m // a counterweight: load takes force away
	assist.PerLoad = over(1, 61, func(u float64) float64 { return -5 }).Hold
	still := m
	still.PerLoad = make([]float64, 61)
	tests := []struct {
		name    string
		m       Loadable
		want    float64
		by      Reading
		outcome MatchOutcome
		load    float64
		nearest float64
	}{
		{"half of the bare machine", m, bare / 2, Mean, TooHard, -6 / 0.9, 0},
		{"ten times the bare machine", m, bare * 10, Mean, TooEasy, 108 / 0.9, 100},
		{"counterweight", assist, bare - 100, Mean, Matched, 20, 20},
		{"counterweight, more than bare", assist, bare + 50, Mean, TooEasy, -10, 0},
		{"counterweight too small", assist, bare - 505, Mean, TooHard, 101, 100},
		{"load without effect", still, bare + 1, Mean, Unreachable, 0, 0},
		{"peak without effect", still, 1e4, PeakForce, Unreachable, 0, 0},
		{"peak above want already", still, 1, PeakForce, Unreachable, 0, 0},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			got, err := MatchLoad(tt.want, tt.by, tt.m, plates(2.5, 100))
			if err != nil {
				t.Fatal(err)
			}
			near(t, "load", got.Load, tt.load, 1e-9, "kg")
			near(t, "nearest", got.Nearest, tt.nearest, 0, "kg")
			if got.Outcome != tt.outcome {
				t.Errorf("outcome %v, want %v", got.Outcome, tt.outcome)
			}
		})
	}
}

// The load found gives the wanted peak back, for loads that help at some
// places and hinder at others too.
func TestMatchPeakGivesPeakBack(t *testing.T) {
	rng := rand.New(rand.NewPCG(31, 32))
	found := 0
	for range 200 {
		n := 5 + rng.IntN(60)
		c := randomCurve(rng, n)
		a, k := 3*rng.Float64(), 6*rng.Float64()
		m := Loadable{Travel: c.Travel, Fixed: c.Hold, PerLoad: make([]float64, n)}
		for i := range m.PerLoad {
			m.PerLoad[i] = 2 + a*math.Sin(k*float64(i)/float64(n))
		}
		want := 150 + 400*rng.Float64()
		got, err := MatchLoad(want, PeakForce, m, plates(1, 300))
		if err != nil {
			t.Fatal(err)
		}
		if got.Outcome == Unreachable {
			continue
		}
		found++
		near(t, "peak", mustRead(t, m.At(got.Load)).Peak.Force, want, 1e-8*want, "N")
	}
	if found < 100 {
		t.Errorf("only %d of 200 loads found", found)
	}
}

// With a peak that falls and then rises with the load there are two answers:
// max(100 - load, 50 + load) = 90 at 10 and at 40 kg. On average this load adds
// force, so the heavier is given.
func TestMatchPeakTakesHeavierOfTwo(t *testing.T) {
	m := Loadable{Travel: []float64{0, 1, 2}, Fixed: []float64{100, 20, 50}, PerLoad: []float64{-1, 0.5, 1}}
	got, err := MatchLoad(90, PeakForce, m, []float64{0, 20, 60})
	if err != nil {
		t.Fatal(err)
	}
	near(t, "load", got.Load, 40, 1e-9, "kg")
	got, err = MatchLoad(70, PeakForce, m, []float64{0, 20, 60}) // least possible is 75
	if err != nil || got.Outcome != Unreachable {
		t.Errorf("got %+v, %v; want unreachable", got, err)
	}
}

func TestMatchRefuses(t *testing.T) {
	m := loadedLever(5)
	gone := m
	gone.Gap = []Reason{None, None, Slack, Slack, Slack} // nothing of the last third
	short := m
	short.PerLoad = m.PerLoad[:3]
	var match *MatchError
	var length *LengthError
	var value *ValueError
	tests := []struct {
		name    string
		m       Loadable
		want    float64
		by      Reading
		allowed []float64
		target  any
	}{
		{"by flatness", m, 100, Flatness, []float64{0}, &match},
		{"no loads", m, 100, Mean, nil, &length},
		{"loads out of order", m, 100, Mean, []float64{5, 5}, &value},
		{"wanted without bound", m, math.Inf(1), Mean, []float64{5}, &value},
		{"short column", short, 100, Mean, []float64{5}, &length},
	}
	for _, tt := range tests {
		if _, err := MatchLoad(tt.want, tt.by, tt.m, tt.allowed); !errors.As(err, tt.target) {
			t.Errorf("%s: got %v", tt.name, err)
		}
	}
	if _, err := MatchLoad(100, ShortenedMean, gone, []float64{5}); !errors.Is(err, ErrNoForce) {
		t.Errorf("third without force: got %v", err)
	}
}
