package human

import (
	"math"
	"sort"
	"testing"

	"gonum.org/v1/gonum/stat"

	"steelyard/reference"
)

const people = 20000

func drawn(sex reference.Sex, seed uint64, n int) (out [reference.NumDimensions][]float64) {
	s := NewSampler(sex, seed)
	for range n {
		for d, v := range s.Draw().Size {
			out[d] = append(out[d], v)
		}
	}
	return out
}

// 5th, 50th and 95th percentile of the public survey data, m (kg for mass).
// The tolerance is four standard errors of a percentile of the sample plus
// 4 mm (0.8 kg) for people who are not quite normal.
func TestSampledPercentiles(t *testing.T) {
	for _, c := range []struct {
		sex          reference.Sex
		d            reference.Dimension
		p5, p50, p95 float64
		sd           float64
	}{
		{reference.Male, reference.Stature, 1.648, 1.755, 1.870, 0.0686},
		{reference.Male, reference.Mass, 64.4, 84.6, 110.7, 14.2},
		{reference.Male, reference.UpperArm, 0.307, 0.335, 0.365, 0.0175},
		{reference.Male, reference.ForearmGrip, 0.320, 0.3485, 0.379, 0.0180},
		{reference.Male, reference.ButtockKnee, 0.569, 0.617, 0.669, 0.0306},
		{reference.Female, reference.Stature, 1.525, 1.626, 1.740, 0.0642},
		{reference.Female, reference.Mass, 51.3, 66.8, 87.1, 11.0},
		{reference.Female, reference.SittingHeight, 0.803, 0.857, 0.912, 0.0331},
		{reference.Female, reference.PoplitealHeight, 0.350, 0.387, 0.428, 0.0236},
		{reference.Female, reference.ShoulderBreadth, 0.335, 0.365, 0.396, 0.0183},
	} {
		x := drawn(c.sex, 7, people)[c.d]
		sort.Float64s(x)
		shape := 0.004
		if c.d == reference.Mass {
			shape = 0.8
		}
		// The standard error of the 5 % point of n normal values is 2.11·σ/√n.
		tolerance := shape + 4*2.11*c.sd/math.Sqrt(people)
		for _, q := range []struct{ p, want float64 }{{0.05, c.p5}, {0.5, c.p50}, {0.95, c.p95}} {
			near(t, c.sex.String()+" "+c.d.String(), stat.Quantile(q.p, stat.Empirical, x, nil), q.want, tolerance)
		}
	}
}

// Correlations of the public data (Python 3.11, statistics.correlation).
func TestSampledCorrelations(t *testing.T) {
	x := drawn(reference.Male, 11, people)
	near(t, "stature with upper arm", stat.Correlation(x[reference.Stature], x[reference.UpperArm], nil), 0.795253, 0.015)
	near(t, "upper arm with forearm", stat.Correlation(x[reference.UpperArm], x[reference.Forearm], nil), 0.719061, 0.015)
}

func TestSamplingRepeats(t *testing.T) {
	a, b, c := NewSampler(reference.Unstated, 3), NewSampler(reference.Unstated, 3), NewSampler(reference.Unstated, 4)
	women := 0
	for range 100 {
		x, y, z := a.Draw(), b.Draw(), c.Draw()
		if x != y || x == z {
			t.Fatal("the same seed must draw the same person, another seed another")
		}
		if x.Sex == reference.Female {
			women++
		}
		if l := LinksOf(x.Size); !(l.Thigh > 0.2 && l.UpperArm > 0.15 && l.BackToHip > 0) {
			t.Fatalf("impossible body %+v", l)
		}
	}
	d := a.Draw()
	if body := d.Body(Ranges{}); body.Links != LinksOf(d.Size) || body.Segment(reference.SegThigh).Mass <= 0 {
		t.Errorf("a drawn body has other links than its dimensions: %+v", body.Links)
	}
	if women != 50 {
		t.Errorf("%d women of 100", women)
	}
}

func BenchmarkDraw10000Bodies(b *testing.B) {
	var last Links
	for range b.N {
		s := NewSampler(reference.Unstated, 1)
		for range 10000 {
			last = LinksOf(s.Draw().Size)
		}
	}
	if last.Thigh <= 0 {
		b.Fatal("no body")
	}
}

func BenchmarkArmSolved(b *testing.B) {
	body := testBody(b)
	arm, shoulder := body.Links.Arm(Right), upright.Shoulder(body.Links, Right)
	hand := shoulder
	hand.X += 0.4
	loads := make([]Wrench, 3)
	sum := 0.0
	for range b.N {
		p, err := arm.Reach(upright, shoulder, hand, degrees(45))
		if err != nil {
			b.Fatal(err)
		}
		chain := body.ArmChain(p)
		chain[2].Load = Wrench{At: p.End}
		chain[2].Load.Force.X = -200
		JointLoads(loads, chain[:], chain[0].Load.Force)
		sum += upright.ArmMoments(Right, p, loads[0].Moment, loads[1].Moment).Elbow
	}
	if sum == 0 {
		b.Fatal("no moment")
	}
}

func BenchmarkNewBody(b *testing.B) {
	for range b.N {
		testBody(b)
	}
}
