package view

import (
	"context"
	"errors"
	"fmt"
	"sync"

	"steelyard/evaluation"
	"steelyard/internal/server/api"
	"steelyard/mechanism"
	"steelyard/sheet"
)

// Bounds on Look.Positions.
const (
	fewest = 11
	most   = 401
)

// strokeRows is how finely a repetition is shown.
const strokeRows = 241

// Opened is a machine sheet that has been read. It is safe for concurrent use.
type Opened struct {
	Document *sheet.Document
	Machine  *sheet.Machine

	mu    sync.Mutex
	built map[string]*sheet.Built // by the settings chosen
}

// mostBuilt bounds how many ways of setting one machine are kept built.
const mostBuilt = 8

// Open reads a machine sheet. Name is what messages call it.
func Open(name, text string) (*Opened, error) {
	d, err := sheet.Read(name, []byte(text))
	if err != nil {
		return nil, err
	}
	return open(d)
}

func open(d *sheet.Document) (*Opened, error) {
	m, err := d.Machine()
	if err != nil {
		return nil, err
	}
	return &Opened{Document: d, Machine: m}, nil
}

// Set returns the machine with settings chosen.
func (o *Opened) Set(choices []api.Choice) (*sheet.Built, error) {
	o.mu.Lock()
	defer o.mu.Unlock()
	key := fmt.Sprintf("%q", choices)
	if b := o.built[key]; b != nil {
		return b, nil
	}
	choice := map[string]string{}
	for _, c := range choices {
		choice[c.Setting] = c.Value
	}
	b, err := o.Machine.Build(choice)
	if err != nil {
		return nil, err
	}
	if o.built == nil || len(o.built) == mostBuilt {
		o.built = map[string]*sheet.Built{}
	}
	o.built[key] = b
	return b, nil
}

// Evaluate evaluates the machine without error band, with the stroke if a tempo
// is given and it can be had; else why says why not.
func (o *Opened) Evaluate(ctx context.Context, b *sheet.Built, look *api.Look) (e *evaluation.Evaluation, why string, err error) {
	if e, why, err = o.evaluate(ctx, b, look, evaluation.Options{Draws: -1}); err == nil {
		e.BandToCome = true
	}
	return e, why, err
}

func (o *Opened) evaluate(ctx context.Context, b *sheet.Built, look *api.Look, opt evaluation.Options) (e *evaluation.Evaluation, why string, err error) {
	if look.Positions != 0 {
		opt.Positions = min(max(look.Positions, fewest), most)
	}
	if e, err = evaluation.Run(ctx, o.Machine, b, opt); err != nil || look.Tempo == nil {
		return e, "", err
	}
	t := mechanism.Tempo{Up: look.Tempo.Up, Top: look.Tempo.Top, Down: look.Tempo.Down, Bottom: look.Tempo.Bottom}
	stroke, err := e.Model.Stroke(e.Sweep, t, strokeRows)
	if err != nil {
		return e, Told(err), nil
	}
	e.Stroke = stroke
	return e, "", nil
}

// Preview evaluates a machine sheet as the look asks, with a person on it if one
// is given. The band is of first order.
func Preview(ctx context.Context, text *Text, look api.Look, person *sheet.Person) api.Preview {
	p, _ := previewed(ctx, text, look, person)
	return p
}

// previewed returns the evaluation as well; nil if there is none.
func previewed(ctx context.Context, text *Text, look api.Look, person *sheet.Person) (api.Preview, *evaluation.Evaluation) {
	p := empty(text.text)
	o, err := text.opened()
	if err != nil {
		p.Problems = Problems(err)
		return p, nil
	}
	p.Name = o.Machine.Name
	b, err := o.Set(look.Settings)
	if err != nil {
		p.Problems = Problems(err)
		return p, nil
	}
	p.Settings = choices(b)
	if look.Structure {
		s := o.structure(b)
		p.Structure = &s
	}
	e, why, err := o.Evaluate(ctx, b, &look)
	if err != nil {
		p.Problems = Problems(err)
		return p, nil
	}
	p.StrokeGap = why
	if !look.NoBand {
		if p.Band, err = firstOrder(e); err != nil {
			p.Problems = Problems(err)
			return p, nil
		}
	}
	meet(&p, e, person)
	if err := fillPreview(&p, e, &look); err != nil {
		p.Problems = Problems(err)
		return p, nil
	}
	return p, e
}

// fillPreview puts an evaluation into a preview: everything but the sheet taken
// apart, a band of first order, and the person.
func fillPreview(p *api.Preview, e *evaluation.Evaluation, look *api.Look) error {
	p.Name, p.Settings = e.Name, choices(e.Built)
	if e.Built.Machine.Plane.Mirrored {
		p.Sides = 2
	}
	p.Side = e.Side()
	c := curve(e)
	p.Curve = &c
	if e.Band != nil && e.Band.Draws > 0 {
		p.Band = band(e, e.Band)
	}
	p.Readings = readings(e)
	p.Words = e.Words(Units(look.Imperial))
	p.Stroke = stroke(e.Stroke)
	p.Cautions = e.Cautions()
	return picture(p, e, look)
}

// Unusable is the preview of a text that makes no machine.
func Unusable(text string, err error) api.Preview {
	p := empty(text)
	p.Problems = Problems(err)
	return p
}

func empty(text string) api.Preview {
	return api.Preview{Text: text, Sides: 1, Problems: []api.SheetProblem{}, Settings: []api.Choice{}, Readings: []api.Readings{},
		Words: []string{}, Frames: []api.Frame{}, PersonHelps: []api.SettingHelp{}, Cautions: []string{}}
}

func choices(b *sheet.Built) []api.Choice {
	out := []api.Choice{}
	for _, c := range b.Choices {
		out = append(out, api.Choice{Setting: c.Setting, Value: c.Value})
	}
	return out
}

// Units returns how the reader wants quantities written.
func Units(imperial bool) evaluation.Formatter {
	if imperial {
		return evaluation.Imperial{}
	}
	return evaluation.Metric{}
}

// Problems lists what an error says about a sheet.
func Problems(err error) []api.SheetProblem {
	out := []api.SheetProblem{}
	for _, p := range problemsIn(err) {
		out = append(out, api.SheetProblem{Line: p.Line, Column: p.Column, Path: p.Path, What: p.What, Limit: p.Limit, Cure: p.Cure, Message: sentence(p)})
	}
	if len(out) > 0 {
		return out
	}
	if located := (*sheet.Located)(nil); errors.As(err, &located) {
		return []api.SheetProblem{{Line: located.Line, Column: located.Column, What: Told(located.Err), Message: Told(err)}}
	}
	return []api.SheetProblem{{What: Told(err), Message: Told(err)}}
}

// Sampled is [Preview] with the error band drawn from every ±, which takes
// seconds. The only error is the context's, when that is cancelled.
func Sampled(ctx context.Context, text *Text, look api.Look, person *sheet.Person, progress func(done, total int)) (api.Preview, error) {
	p := empty(text.text)
	err := sample(ctx, &p, text, look, person, progress)
	if ctx.Err() != nil {
		return p, ctx.Err()
	}
	if err != nil {
		p.Problems = Problems(err)
	}
	return p, nil
}

func sample(ctx context.Context, p *api.Preview, text *Text, look api.Look, person *sheet.Person, progress func(done, total int)) error {
	o, err := text.opened()
	if err != nil {
		return err
	}
	b, err := o.Set(look.Settings)
	if err != nil {
		return err
	}
	if look.Structure {
		s := o.structure(b)
		p.Structure = &s
	}
	e, why, err := o.evaluate(ctx, b, &look, evaluation.Options{Progress: progress})
	if err != nil {
		return err
	}
	p.StrokeGap = why
	meet(p, e, person)
	return fillPreview(p, e, &look)
}
