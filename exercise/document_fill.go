package exercise

import (
	"math"

	"steelyard/planar"
	"steelyard/reference"
)

// mostReps is how many repetitions the document lists loads for: those up to
// which both equations are commonly held good.
const mostReps = 10

// Document returns the result as data. The machine's name is only passed on.
func (r *Result) Document(machine string) *Document {
	s := r.Setup
	d := &Document{Format: Format, Machine: machine, Exercise: s.Exercise.String(), Posture: s.Station.Posture.String(),
		Direction: r.Direction.String(), Limbs: s.Limbs(), Mirrored: s.Mirrored, Words: r.Words(), Travel: r.Travel,
		Lifting: r.phaseDocument(&r.Lifting), Lowering: r.phaseDocument(&r.Lowering), Muscles: []MuscleDocument{}, Maximum: r.Maximum.document(),
		Align: AlignmentDocument{r.known(r.Misaligned), r.known(r.Creep), r.known(r.Shear)}}
	for i := range r.Gap {
		d.Gap = append(d.Gap, textOrNil(r.Gap[i]))
		warning := ""
		if r.Faults[i].Kind == PastRange {
			warning = r.Faults[i].String()
		}
		d.Warning = append(d.Warning, textOrNil(warning))
		d.Poses = append(d.Poses, r.pose(i))
	}
	for k := range r.Body.Size {
		e := &r.Body.Size[k]
		d.Body = append(d.Body, SizeDocument{reference.Dimension(k).String(), e.Value, e.Spread, e.Origin.String(), e.Source.Text, e.Source.Mark.String()})
	}
	for k := range r.Thirds {
		t := &r.Thirds[k]
		m := MuscleDocument{Name: t.Muscle.String(), Source: t.Muscle.Source().Text, Mark: t.Muscle.Source().Mark.String(), Length: r.known(t.Length), Effort: r.known(t.Effort)}
		for j, third := range t.Thirds {
			m.Share[j], m.Mean[j] = third.Share, third.Mean
		}
		d.Muscles = append(d.Muscles, m)
	}
	return d
}

func textOrNil(s string) *string {
	if s == "" {
		return nil
	}
	return &s
}

// known returns a column with nil at gaps and where there is no figure; nil for
// no column.
func (r *Result) known(column []float64) []*float64 {
	if column == nil {
		return nil
	}
	out := make([]*float64, len(column))
	for i, x := range column {
		if r.Gap[i] == "" && !math.IsNaN(x) {
			out[i] = &x
		}
	}
	return out
}

func (r *Result) phaseDocument(p *Phase) PhaseDocument {
	d := PhaseDocument{Force: r.known(p.Force), Effort: r.known(p.Effort), Push: make([]*[3]float64, len(p.Push)), Joints: []ColumnDocument{}}
	for i, v := range p.Push {
		if r.Gap[i] == "" {
			t := triple(v)
			d.Push[i] = &t
		}
	}
	for _, why := range p.Unknown {
		d.Unknown = append(d.Unknown, textOrNil(why))
	}
	if p.Sticking >= 0 {
		at, joint := p.Sticking, p.Joints[p.Limiting].Joint.String()
		d.Sticking, d.Limiting = &at, &joint
	}
	for k := range p.Joints {
		d.Joints = append(d.Joints, r.columnDocument(&p.Joints[k]))
	}
	return d
}

// columnDocument leaves effort and what it rests on out where no strength is
// known.
func (r *Result) columnDocument(c *Column) ColumnDocument {
	n := len(c.Effort)
	d := ColumnDocument{Joint: c.Joint.String(), Body: c.Joint.Body(), Angle: r.known(degrees(c.Angle)), Moment: r.known(c.Moment), Action: make([]*string, n),
		Available: r.known(c.Available), Effort: r.known(c.Effort), Low: r.known(c.Low), High: r.known(c.High), Beyond: c.Stretched, NoFigure: c.Untested,
		Source: c.Source.Text, Mark: c.Weakest.String(), Weak: c.Weakest.Weak(), Rescaled: c.Rescaled}
	for i := range n {
		if r.Gap[i] != "" {
			continue
		}
		d.Action[i] = textOrNil(c.Action[i].String())
		if c.Available[i] == 0 {
			d.Available[i], d.Effort[i], d.Low[i], d.High[i] = nil, nil, nil, nil
		}
	}
	return d
}

func degrees(column []planar.Angle) []float64 {
	out := make([]float64, len(column))
	for i, a := range column {
		out[i] = a.Degrees()
	}
	return out
}

func (p *Prediction) document() *MaximumDocument {
	if p == nil {
		return nil
	}
	d := &MaximumDocument{Load: p.Load, Low: p.Low, High: p.High, Factor: p.Factor, Capped: p.Capped, Empty: p.EmptyTooHeavy, Untested: p.Untested}
	for n := 1; n <= mostReps; n++ {
		if middle, band, ok := p.ForRepetitions(n); ok {
			d.Reps = append(d.Reps, n)
			d.RepsAt, d.RepsLow, d.RepsHigh = append(d.RepsAt, middle), append(d.RepsLow, band.Low), append(d.RepsHigh, band.High)
		}
	}
	return d
}
