package human

import (
	"math"

	"steelyard/reference"
)

// Origin tells how a body dimension came about.
type Origin int

const (
	Given       Origin = iota // measured on this person
	FromSurvey                // expected among people of the survey who match what is given
	FromStature               // a fraction of the height, outside the survey
)

// String returns the words a screen shows beside the length.
func (o Origin) String() string {
	return [...]string{"measured", "survey, matched to this person", "fraction of height"}[o]
}

// Estimate is one body dimension of a person.
type Estimate struct {
	Value  float64 // m; kg for Mass
	Spread float64 // one standard deviation, same unit
	Origin Origin
	Source reference.Source
}

// Body is a person with every dimension filled in. It does not change.
type Body struct {
	Person Person
	Size   [reference.NumDimensions]Estimate
	Links  Links
	Ranges Ranges

	segments [reference.NumSegments]SegmentMass
}

// NewBody fills in what was not measured. Missing dimensions are those
// expected among the people of the survey who have the given ones (see
// condition), or fractions of the height for a height the survey did not meet.
//
// It returns an *[InputError] for impossible or contradictory figures, and
// warnings for unusual ones.
func NewBody(p Person) (*Body, []Warning, error) {
	warnings, err := p.Check()
	if err != nil {
		return nil, nil, err
	}
	more, err := p.checkAgreement()
	if err != nil {
		return nil, nil, err
	}
	warnings = append(warnings, more...)

	b := &Body{Person: p}
	low, high := surveySpan(p.Sex, reference.Stature)
	if p.Height < low || p.Height > high {
		b.Size = fromStature(p)
	} else {
		b.Size = fromSurvey(p)
	}
	measured := reference.Source{Text: "measured", Mark: reference.Measured}
	b.Size[reference.Stature] = Estimate{p.Height, 0, Given, measured}
	b.Size[reference.Mass] = Estimate{p.Mass, 0, Given, measured}
	for _, l := range p.Lengths {
		b.Size[l.Dimension] = Estimate{l.Value, l.Spread, Given, measured}
	}
	b.derive()

	ranges, more, err := newRanges(p)
	b.Ranges = ranges
	return b, append(warnings, more...), err
}

// derive computes what follows from the dimensions.
func (b *Body) derive() {
	b.Links = LinksOf(b.Dimensions())
	for s := range b.segments {
		b.segments[s] = b.segment(reference.Segment(s))
	}
}

// Dimensions returns the values of all dimensions.
func (b *Body) Dimensions() reference.Dimensions {
	var out reference.Dimensions
	for d, e := range b.Size {
		out[d] = e.Value
	}
	return out
}

// knownOf lists what a person's figures tell the survey. Mass is left out
// where the survey met no such mass.
func knownOf(p Person) []known {
	out := []known{{reference.Stature, p.Height, 0}}
	if low, high := surveySpan(p.Sex, reference.Mass); p.Mass >= low && p.Mass <= high {
		out = append(out, known{reference.Mass, reference.Score(reference.Mass, p.Mass), 0})
	}
	for _, l := range p.Lengths {
		out = append(out, known{l.Dimension, l.Value, l.Spread})
	}
	return out
}

// fromSurvey matches the person to the survey. When the sex is not stated the
// two halves are mixed evenly: the spread covers both and their difference.
func fromSurvey(p Person) [reference.NumDimensions]Estimate {
	var out [reference.NumDimensions]Estimate
	given := knownOf(p)
	halves := p.Sex.Halves()
	var mean, sd [2]reference.Dimensions
	for h, sex := range halves {
		mean[h], sd[h] = condition(sex, given)
	}
	last := len(halves) - 1
	for d := range out {
		m := (mean[0][d] + mean[last][d]) / 2
		between := (mean[0][d] - mean[last][d]) / 2
		within := (sd[0][d]*sd[0][d] + sd[last][d]*sd[last][d]) / 2
		src := reference.SurveyOf(halves[0]).Row[d].Source
		out[d] = Estimate{m, math.Sqrt(within + between*between), FromSurvey, src}
	}
	return out
}

// fractionItems names the drawing's fractions for the dimensions they fit.
// Shoulder breadth is left to the survey: the drawing's is too wide.
var fractionItems = map[reference.Dimension]string{
	reference.UpperArm: "upper arm", reference.Forearm: "forearm", reference.Hand: "hand",
	reference.HipBreadth: "hip breadth", reference.Thigh: "thigh", reference.Shank: "shank",
	reference.AnkleHeight: "ankle height", reference.Foot: "foot length", reference.Trunk: "trunk",
}

// fromStature takes fractions of the height, from the drawing where it has
// them, else the survey's mean ratio. The spread is that of the ratio between
// people joined with the disagreement of the two sources.
func fromStature(p Person) [reference.NumDimensions]Estimate {
	var out [reference.NumDimensions]Estimate
	halves := p.Sex.Halves()
	for d := range reference.NumDimensions {
		ratio, variance := 0.0, 0.0
		for _, sex := range halves {
			r := reference.SurveyOf(sex).Row[d]
			ratio += r.RatioMean / float64(len(halves))
			variance = max(variance, r.RatioSD*r.RatioSD)
		}
		e := Estimate{Value: ratio * p.Height, Spread: math.Sqrt(variance) * p.Height, Origin: FromStature}
		e.Source = reference.SurveyOf(halves[0]).Row[d].Source
		e.Source.Text = "mean over stature, carried beyond the heights of " + e.Source.Text
		e.Source.Mark = reference.Interpolated
		if f, ok := reference.StatureFraction(fractionItems[d]); ok {
			e.Spread = math.Hypot(e.Spread, (f.Value-ratio)*p.Height)
			e.Value, e.Source = f.Value*p.Height, f.Source
		}
		out[d] = e
	}
	return out
}
