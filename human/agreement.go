package human

import (
	"math"
	"strings"

	"steelyard/reference"
)

// How far a measured length, or a sum of two, may lie from what the survey
// expects at this height, in standard deviations between people. Own choices:
// four is one person in sixteen thousand, eight is a slip of the tape.
const (
	doubtful  = 4.0
	refusedAt = 8.0
)

// checkAgreement compares each measured length, the arm and the leg with what
// the height lets expect.
func (p Person) checkAgreement() ([]Warning, error) {
	var out []Warning
	groups := [][]Length{}
	for i := range p.Lengths {
		groups = append(groups, p.Lengths[i:i+1])
		for _, l := range p.Lengths[:i] {
			if l.Dimension == p.Lengths[i].Dimension {
				return nil, refuse("lengths: "+l.Dimension.String(), "given twice, %.3f and %.3f m; keep one", l.Value, p.Lengths[i].Value)
			}
		}
	}
	for _, pair := range [][2]reference.Dimension{{reference.UpperArm, reference.Forearm}, {reference.Thigh, reference.Shank}} {
		if both := p.pick(pair[0], pair[1]); len(both) == 2 {
			groups = append(groups, both)
		}
	}
	for _, g := range groups {
		z, sum, expected := p.offBy(g)
		names := make([]string, len(g))
		for i, l := range g {
			names[i] = l.Dimension.String()
		}
		name := strings.Join(names, " and ")
		switch {
		case math.Abs(z) > refusedAt:
			return nil, refuse("lengths: "+name, "%.3f m cannot go with a height of %.2f m, where %.3f m is usual; check both, and the unit", sum, p.Height, expected)
		case math.Abs(z) > doubtful:
			out = append(out, warn("lengths: "+name, "%.3f m is %.1f standard deviations from the %.3f m usual at a height of %.2f m; measure again: %s", sum, math.Abs(z), expected, p.Height, g[0].Dimension.How()))
		}
	}
	return out, nil
}

func (p Person) pick(want ...reference.Dimension) []Length {
	var out []Length
	for _, d := range want {
		for _, l := range p.Lengths {
			if l.Dimension == d {
				out = append(out, l)
			}
		}
	}
	return out
}

// offBy returns how many standard deviations the sum of some lengths lies from
// what the person's height lets expect, the sum and the expectation (m). When
// the sex is not stated the half of the survey that fits better counts.
//
// Given the height alone, lengths i and j have the covariance
//
//	Σij - Σih·Σjh/Σhh,  and the sum has the sum of these over all pairs
func (p Person) offBy(g []Length) (z, sum, expected float64) {
	for _, l := range g {
		sum += l.Value
	}
	z = math.Inf(1)
	for _, sex := range p.Sex.Halves() {
		mean, cov := reference.SurveyOf(sex).Normal()
		hh := cov[reference.Stature][reference.Stature]
		m, v := 0.0, 0.0
		for _, a := range g {
			slope := cov[a.Dimension][reference.Stature] / hh
			m += mean[a.Dimension] + slope*(p.Height-mean[reference.Stature])
			v += a.Spread * a.Spread
			for _, b := range g {
				v += cov[a.Dimension][b.Dimension] - slope*cov[b.Dimension][reference.Stature]
			}
		}
		if off := (sum - m) / math.Sqrt(v); math.Abs(off) < math.Abs(z) {
			z, expected = off, m
		}
	}
	return z, sum, expected
}
