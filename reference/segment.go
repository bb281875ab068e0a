package reference

import (
	"math"
	"sync"
)

// SegmentSet chooses one of the published sets of segment parameters.
type SegmentSet int

const (
	// DeLeva is de Leva 1996, J Biomech 29:1223, Table 4: gamma-ray scans of
	// young, sporting men (mean 1.741 m, 73.0 kg) and women (1.735 m, 61.9 kg,
	// from memory) whose landmarks de Leva moved to joint centres; 100 men and
	// 15 women, from memory. Fractions count from the end named first.
	DeLeva SegmentSet = iota

	// Dempster is Dempster 1955 as tabulated by Winter, Biomechanics and Motor
	// Control of Human Movement, Table 4.1: eight elderly male cadavers (from
	// memory), used for both sexes for want of another half. Only one radius of
	// gyration is given, across the segment; about the long axis it is unknown.
	Dempster
)

// String returns the name of the set.
func (s SegmentSet) String() string {
	return [...]string{"de Leva 1996", "Dempster via Winter"}[s]
}

// Segment is a body segment of the limb model.
type Segment int

const (
	SegHead Segment = iota
	SegTrunk
	SegUpperArm
	SegForearm
	SegHand
	SegThigh
	SegShank
	SegFoot
	NumSegments // how many there are
)

// String returns the plain name of the segment.
func (s Segment) String() string {
	return [...]string{"head", "trunk", "upper arm", "forearm", "hand", "thigh", "shank", "foot"}[s]
}

// SegmentRow is one segment of one set.
type SegmentRow struct {
	Mass   float64 // fraction of body mass
	Centre float64 // centre of mass from the first end, fraction of segment length
	// Radii of gyration about the centre of mass, fraction of segment length:
	// about the forward, the sideways and the long axis. Long is NaN where the
	// set does not give it.
	Sagittal, Transverse, Long float64
	Ends                       string // first-last, in the source's abbreviations
	Source                     Source
}

// rowNames picks, for each segment, the row whose ends match the lengths of
// this project: shank to the outer ankle bone, hand from the wrist to the tip
// of the middle finger, trunk from mid-shoulders to mid-hips (in Dempster from
// hips to shoulders), head from the crown to the base of the neck.
var rowNames = [...][NumSegments]string{
	DeLeva:   {"head 2", "trunk 3", "upper arm", "forearm", "hand 3", "thigh", "shank 2", "foot"},
	Dempster: {"head neck", "trunk", "upper arm", "forearm", "hand", "thigh", "shank", "foot"},
}

// SegmentOf returns the row of a set for women or men. For [Unstated] it is
// the mean of the two.
func SegmentOf(set SegmentSet, sex Sex, s Segment) SegmentRow {
	halves := sex.Halves()
	out := SegmentRow{}
	for _, h := range halves {
		r := SegmentNamed(set, h, rowNames[set][s])
		k := 1 / float64(len(halves))
		out.Mass += k * r.Mass
		out.Centre += k * r.Centre
		out.Sagittal += k * r.Sagittal
		out.Transverse += k * r.Transverse
		out.Long += k * r.Long
		out.Ends, out.Source = r.Ends, r.Source
	}
	return out
}

// SegmentNamed returns the row of a set under the name it has in the source,
// such as "forearm 2" or "whole leg". It panics if there is none.
func SegmentNamed(set SegmentSet, sex Sex, name string) SegmentRow {
	r, ok := segments()[segmentKey{set, sex, name}]
	if !ok {
		panic("reference: " + set.String() + " has no segment " + name)
	}
	return r
}

type segmentKey struct {
	set  SegmentSet
	sex  Sex
	name string
}

var segments = sync.OnceValue(func() map[segmentKey]SegmentRow {
	out := make(map[segmentKey]SegmentRow)
	for _, r := range rows("segments_deleva.csv") {
		out[segmentKey{DeLeva, parseSex(r.text("sex")), r.text("segment")}] = SegmentRow{
			Mass: r.number("mass_frac"), Centre: r.number("com_frac"),
			Sagittal: r.number("rg_sagittal"), Transverse: r.number("rg_transverse"), Long: r.number("rg_longitudinal"),
			Ends: r.text("endpoints"), Source: r.source(),
		}
	}
	for _, r := range rows("segments_dempster.csv") {
		gyration := r.numberOrNaN("rg_com")
		row := SegmentRow{
			Mass: r.number("mass_frac"), Centre: r.number("com_frac"),
			Sagittal: gyration, Transverse: gyration, Long: math.NaN(),
			Ends: r.text("endpoints"), Source: r.source(),
		}
		for _, sex := range []Sex{Female, Male} {
			out[segmentKey{Dempster, sex, r.text("segment")}] = row
		}
	}
	return out
})

var statures = sync.OnceValue(func() map[string]Fraction {
	out := make(map[string]Fraction)
	for _, r := range rows("stature_fractions.csv") {
		out[r.text("item")] = Fraction{r.number("fraction"), r.source()}
	}
	return out
})

// Fraction is a length over stature.
type Fraction struct {
	Value  float64
	Source Source
}

// StatureFraction returns the length of an item such as "thigh" or "hip
// height" over stature, and whether the table has it.
//
// Source: Drillis & Contini 1966 as drawn in Winter 2009, Fig. 4.1. Its
// shoulder breadth, 0.259, is wider than the survey's 0.237 (men) and 0.224
// (women) between the shoulder tips; prefer the survey's.
func StatureFraction(item string) (Fraction, bool) {
	f, ok := statures()[item]
	return f, ok
}
