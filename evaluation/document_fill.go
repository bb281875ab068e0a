package evaluation

import (
	"encoding/json"
	"io"

	"steelyard/mechanism"
	"steelyard/planar"
	"steelyard/profile"
)

// Document returns the evaluation as data.
func (e *Evaluation) Document(f Formatter) *Document {
	m := &e.Built.Machine
	d := &Document{Format: Format, Name: e.Name, Sides: 1, Settings: []Chosen{}, Words: e.Words(f), Columns: e.columns(),
		Readings: map[string]ReadingDocument{}, Joints: []JointDocument{}, Ropes: []RopeDocument{},
		Band: e.bandDocument(), Person: e.personDocument(), Measurements: []MeasurementDocument{}, Cautions: e.Cautions()}
	if m.Plane.Mirrored {
		d.Sides = 2
	}
	for _, c := range e.Built.Choices {
		d.Settings = append(d.Settings, Chosen{c.Setting, c.Value})
	}
	for p, r := range e.Readings {
		d.Readings[[...]string{"hold", "lift", "lower"}[p]] = readingDocument(r)
	}
	for j := range m.Joints {
		d.Joints = append(d.Joints, e.jointDocument(j))
	}
	for r := range m.Ropes {
		d.Ropes = append(d.Ropes, e.ropeDocument(r))
	}
	if s := e.Stroke; s != nil {
		d.Stroke = &StrokeDocument{s.Time, s.Travel, s.Force, s.Static, s.Leaves, s.Slack}
	}
	for _, v := range e.Built.Measurements {
		d.Measurements = append(d.Measurements, MeasurementDocument{v.Name, v.Path, v.Value, v.Spread})
	}
	return d
}

// WriteJSON writes the evaluation as a [Document].
func (e *Evaluation) WriteJSON(w io.Writer, f Formatter) error {
	out := json.NewEncoder(w)
	out.SetEscapeHTML(false)
	out.SetIndent("", " ")
	return out.Encode(e.Document(f))
}

func (e *Evaluation) columns() Columns {
	sw := e.Sweep
	c := Columns{DriverUnit: "rad", Travel: e.Curve.Travel, LoadTravel: []float64{}}
	m := &e.Built.Machine
	if m.Joints[m.Drive.Joint].Kind == mechanism.Prismatic {
		c.DriverUnit = "m"
	}
	for k, i := range e.Rows {
		has := e.Curve.Has(k)
		c.Driver = append(c.Driver, sw.Driver[i])
		c.Contact = append(c.Contact, pair(sw.Contact[i]))
		c.LoadTravel = append(c.LoadTravel, sw.LoadTravel[i]-sw.LoadTravel[e.Rows[0]])
		c.Hold, c.Lift, c.Lower = append(c.Hold, known(has, sw.Hold[i])), append(c.Lift, known(has, sw.Lift[i])), append(c.Lower, known(has, sw.Lower[i]))
		c.LiftRatio = append(c.LiftRatio, known(has, sw.LiftRatio[i]))
		c.Mass, c.MassSlope = append(c.Mass, known(has, sw.Mass[i])), append(c.MassSlope, known(has, sw.MassSlope[i]))
		var why *string
		if stop := sw.Stops[i]; stop != nil {
			text := stop.Error()
			why = &text
		}
		c.Gap = append(c.Gap, why)
	}
	return c
}

func pair(v planar.Vec) [2]float64 { return [2]float64{v.X, v.Y} }

// known returns the number, or nil in a gap.
func known(has bool, x float64) *float64 {
	if !has {
		return nil
	}
	return &x
}

func readingDocument(r profile.Readings) ReadingDocument {
	d := ReadingDocument{Loads: r.Loads.String(), Values: map[string]float64{}, Units: map[string]string{}}
	for _, q := range profile.All() {
		d.Values[q.String()], d.Units[q.String()] = r.Value(q), q.Unit()
	}
	return d
}

func (e *Evaluation) jointDocument(j int) JointDocument {
	d := JointDocument{Name: e.Built.Machine.Joints[j].Name}
	for k, i := range e.Rows {
		r := e.Sweep.Reaction(i, j, mechanism.Hold)
		var f *[2]float64
		if e.Curve.Has(k) {
			p := pair(r.Force)
			f = &p
		}
		d.Force, d.Moment = append(d.Force, f), append(d.Moment, known(f != nil, r.Moment))
	}
	return d
}

func (e *Evaluation) ropeDocument(r int) RopeDocument {
	rope := &e.Built.Machine.Ropes[r]
	d := RopeDocument{Name: rope.Name}
	for _, s := range rope.Route {
		d.Stations = append(d.Stations, StationDocument{Name: s.Name})
	}
	for k, i := range e.Rows {
		has := e.Curve.Has(k)
		d.Hold = append(d.Hold, known(has, e.Sweep.Tension(i, r, mechanism.Hold)))
		d.Lift = append(d.Lift, known(has, e.Sweep.Tension(i, r, mechanism.Lift)))
		d.Lower = append(d.Lower, known(has, e.Sweep.Tension(i, r, mechanism.Lower)))
		for s := range rope.Route {
			d.Stations[s].Radius = append(d.Stations[s].Radius, known(has, e.Sweep.Radius(i, r, s)))
		}
	}
	return d
}

func (e *Evaluation) bandDocument() *BandDocument {
	b := e.Band
	if b == nil {
		return nil
	}
	d := &BandDocument{Ranges: map[string]Range{}, Loads: map[string]float64{}, Draws: b.Draws, Failed: b.Failed}
	for k, in := range b.Between {
		has := e.Curve.Has(k)
		d.Low, d.High = append(d.Low, known(has, in.Low)), append(d.High, known(has, in.High))
	}
	for _, q := range profile.All() {
		in := b.Reading(q)
		d.Ranges[q.String()] = Range{in.Low, in.High}
	}
	for w, share := range b.Verdict.Shares {
		d.Loads[profile.Where(w).String()] = share
	}
	if n, ok := b.Dominant(); ok {
		d.Measure = &NarrowingDocument{n.Measurement.Name, n.Share, n.Half, n.Without}
	}
	return d
}
