package reference

import (
	"math"
	"testing"
)

// A whole body is one head, one trunk and two of everything else.
func TestSegmentMassesMakeOneBody(t *testing.T) {
	limbs := []Segment{SegUpperArm, SegForearm, SegHand, SegThigh, SegShank, SegFoot}
	for _, c := range []struct {
		set SegmentSet
		sex Sex
	}{{DeLeva, Male}, {DeLeva, Female}, {DeLeva, Unstated}, {Dempster, Male}} {
		sum := SegmentOf(c.set, c.sex, SegHead).Mass + SegmentOf(c.set, c.sex, SegTrunk).Mass
		for _, s := range limbs {
			sum += 2 * SegmentOf(c.set, c.sex, s).Mass
		}
		if math.Abs(sum-1) > 3e-4 { // the printed fractions have four decimals
			t.Errorf("%v, %v: segment masses add up to %.4f of the body, want 1", c.set, c.sex, sum)
		}
	}
}

// The same bodily point, measured over two differently ended segments.
func TestDeLevaCentresAgreeBetweenDefinitions(t *testing.T) {
	for _, c := range []struct {
		sex        Sex
		a, b       string
		lenA, lenB float64 // mean lengths, mm, de Leva 1996 Table 4
	}{
		{Male, "forearm", "forearm 2", 268.9, 266.9},
		{Female, "forearm", "forearm 2", 264.3, 262.4},
		{Male, "shank", "shank 2", 440.3, 434.0},
		{Male, "shank", "shank 3", 440.3, 427.7},
		{Female, "shank", "shank 2", 438.6, 432.3},
		{Female, "shank", "shank 3", 438.6, 426.0},
	} {
		a := SegmentNamed(DeLeva, c.sex, c.a).Centre * c.lenA
		b := SegmentNamed(DeLeva, c.sex, c.b).Centre * c.lenB
		if math.Abs(a-b) > 0.1 {
			t.Errorf("%v %s and %s: centre %.2f and %.2f mm from the same joint", c.sex, c.a, c.b, a, b)
		}
	}
}

// Dempster's table gives the gyration about the centre and about the near end:
// the parallel-axis theorem must hold between them.
func TestDempsterParallelAxis(t *testing.T) {
	for _, r := range rows("segments_dempster.csv") {
		about, near := r.numberOrNaN("rg_com"), r.numberOrNaN("rg_proximal")
		switch name := r.text("segment"); {
		case math.IsNaN(about) || math.IsNaN(near):
			continue
		case name == "head neck" || name == "whole leg":
			continue // printed 0.116 for a centre at the far end, and 0.560 for 0.553; neither is used
		}
		want := math.Hypot(about, r.number("com_frac"))
		if math.Abs(near-want) > 0.0025 {
			t.Errorf("%s: gyration about the near end %.3f, parallel axis gives %.4f", r.text("segment"), near, want)
		}
	}
}

func TestStatureFractions(t *testing.T) {
	at := func(item string) float64 {
		f, ok := StatureFraction(item)
		if !ok {
			t.Fatalf("no %s", item)
		}
		return f.Value
	}
	// Differences of the drawing's own heights, Winter 2009 Fig. 4.1.
	for _, c := range []struct {
		item, above, below string
	}{{"thigh", "hip height", "knee height"}, {"shank", "knee height", "ankle height"}, {"trunk", "shoulder height", "hip height"}} {
		if got, want := at(c.item), at(c.above)-at(c.below); math.Abs(got-want) > 1e-12 {
			t.Errorf("%s %.3f, heights give %.3f", c.item, got, want)
		}
	}
}
