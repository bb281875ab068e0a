package view

import (
	"errors"
	"math"

	"steelyard/evaluation"
	"steelyard/exercise"
	"steelyard/internal/server/api"
	"steelyard/sheet"
)

// Person reads a person's sheet.
func Person(name, text string) (*sheet.Person, error) {
	d, err := sheet.Read(name, []byte(text))
	if err != nil {
		return nil, err
	}
	return d.Person()
}

// meet puts a person on the evaluated machine and into the preview. If the
// person cannot be put there, the preview says why.
func meet(p *api.Preview, e *evaluation.Evaluation, person *sheet.Person) {
	if person == nil {
		return
	}
	m, err := e.Meet(person)
	if err != nil {
		p.PersonGap = Told(err)
		var nowhere *evaluation.NowhereError
		if errors.As(err, &nowhere) {
			p.PersonHelps = settingHelps(nowhere.Helps)
		}
		return
	}
	e.Person = m
	on := onMachine(e)
	p.Person = &on
}

// onMachine returns the columns of a person on the machine, by position of the
// curve.
func onMachine(e *evaluation.Evaluation) api.PersonOnMachine {
	m := e.Person
	r := m.Rest
	out := api.PersonOnMachine{Name: m.Name(), Exercise: r.Setup.Exercise.String(), Posture: r.Setup.Station.Posture.String(),
		Words: list(m.Words()), Warnings: []string{}, Helps: settingHelps(m.Helps), Joints: []api.JointColumn{}, Muscles: []api.MuscleRange{},
		Cautions: []string{evaluation.PersonCaution}}
	for _, w := range m.Warnings {
		out.Warnings = append(out.Warnings, w.String())
	}
	fillEffort(&out, e)
	for i := range r.Lifting.Joints {
		out.Joints = append(out.Joints, jointColumn(e, &r.Lifting.Joints[i]))
	}
	for i := range r.Thirds {
		out.Muscles = append(out.Muscles, muscleRange(e, &r.Thirds[i]))
	}
	if x := r.Maximum; x != nil {
		out.Maximum = &api.Maximum{Load: newtons(x.Load), Low: newtons(x.Low), High: newtons(x.High), Factor: share(x.Factor),
			Capped: x.Capped, Empty: x.EmptyTooHeavy, AtMost: x.Untested > 0}
	}
	return out
}

func settingHelps(helps []evaluation.Help) []api.SettingHelp {
	out := []api.SettingHelp{}
	for _, h := range helps {
		out = append(out, api.SettingHelp{Setting: h.Setting, Value: h.Value, Words: h.String() + "."})
	}
	return out
}

// fillEffort fills the columns that are of the whole body.
func fillEffort(out *api.PersonOnMachine, e *evaluation.Evaluation) {
	m := e.Person
	lift, lower := &m.Rest.Lifting, &m.Rest.Lowering
	n := len(e.Rows)
	out.Can, out.CanMost = make([]*float64, n), make([]*float64, n)
	out.Effort, out.Lowering = make([]*float64, n), make([]*float64, n)
	out.Limiter, out.Gap = make([]*string, n), make([]*string, n)
	for k, row := range e.Rows {
		if gap := m.Rest.Gap[row]; gap != "" {
			out.Gap[k] = &gap
			continue
		}
		if why := lift.Unknown[row]; why != "" {
			out.Gap[k] = &why
		}
		out.Can[k], out.CanMost[k] = finite(m.Can[row], newtons), finite(m.CanMost[row], newtons)
		out.Effort[k], out.Lowering[k] = finite(lift.Effort[row], share), finite(lower.Effort[row], share)
		if out.Effort[k] != nil && len(lift.Joints) > 0 {
			joint := lift.Joints[lift.Limiter[row]].Joint.String()
			out.Limiter[k] = &joint
		}
		if row == lift.Sticking {
			at := k
			out.Sticking, out.Limiting = &at, lift.Joints[lift.Limiting].Joint.String()
		}
	}
}

// finite returns the number rounded, or nil if it is none or has no bound.
func finite(x float64, round func(float64) float64) *float64 {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return nil
	}
	x = round(x)
	return &x
}

func jointColumn(e *evaluation.Evaluation, c *exercise.Column) api.JointColumn {
	out := api.JointColumn{Joint: c.Joint.String(), Body: c.Joint.Body(), Source: c.Source.Text, Mark: c.Weakest.String(), Weak: c.Weakest.Weak(), Rescaled: c.Rescaled}
	pick := func(column *[]*float64, has bool, x float64, round func(float64) float64) {
		var v *float64
		if has {
			v = finite(x, round)
		}
		*column = append(*column, v)
	}
	for _, row := range e.Rows {
		there := e.Person.Rest.Gap[row] == ""
		out.Guess = append(out.Guess, there && c.Guessed(row))
		figure := there && c.Available[row] > 0
		pick(&out.Angle, there, float64(c.Angle[row]), share)
		pick(&out.Moment, there, c.Moment[row], newtons)
		pick(&out.Available, figure, c.Available[row], newtons)
		pick(&out.Effort, figure, c.Effort[row], share)
		pick(&out.Low, figure, c.Low[row], share)
		pick(&out.High, figure, c.High[row], share)
	}
	return out
}

func muscleRange(e *evaluation.Evaluation, t *exercise.MuscleThirds) api.MuscleRange {
	out := muscleThirds(t)
	for _, row := range e.Rows {
		var length, effort *float64
		if e.Person.Rest.Gap[row] == "" {
			length, effort = finite(t.Length[row], share), finite(t.Effort[row], share)
		}
		out.Length, out.Effort = append(out.Length, length), append(out.Effort, effort)
	}
	return out
}

// muscleThirds returns a muscle's thirds without its columns.
func muscleThirds(t *exercise.MuscleThirds) api.MuscleRange {
	out := api.MuscleRange{Name: t.Muscle.String(), Length: []*float64{}, Effort: []*float64{}}
	for i, third := range t.Thirds {
		out.Share[i], out.Guess[i] = share(third.Share), third.Guess
		if third.Share > 0 && third.Mean > 0 {
			out.Mean[i] = finite(third.Mean, share)
		}
	}
	return out
}

// fitOf returns how a machine suits a person.
func fitOf(e *evaluation.Evaluation, person *sheet.Person) *api.Fit {
	m, err := e.Meet(person)
	if err != nil {
		return &api.Fit{Muscles: []api.MuscleRange{}, Trouble: Told(err)}
	}
	r := m.Rest
	f := &api.Fit{Exercise: r.Setup.Exercise.String(), Muscles: []api.MuscleRange{}}
	reached, within := 0, 0
	for _, row := range e.Rows {
		switch fault := r.Faults[row]; {
		case fault.Kind == exercise.NoFault:
			reached++
			within++
		case fault.Placed():
			reached++
		}
	}
	f.Reached, f.InRange = share(float64(reached)/float64(len(e.Rows))), share(float64(within)/float64(len(e.Rows)))
	if k := r.Lifting.Sticking; k >= 0 {
		f.Effort, f.Limiting = finite(r.Lifting.Peak(), share), r.Lifting.Joints[r.Lifting.Limiting].Joint.String()
	}
	for i := range r.Thirds {
		f.Muscles = append(f.Muscles, muscleThirds(&r.Thirds[i]))
	}
	return f
}
