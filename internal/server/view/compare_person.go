package view

import (
	"sort"

	"steelyard/evaluation"
	"steelyard/internal/server/api"
	"steelyard/sheet"
)

// comparePerson puts the person on one compared machine: effort and joint
// moments by share of the travel.
func comparePerson(item *api.ComparedCurve, e *evaluation.Evaluation, person *sheet.Person) {
	m, err := e.Meet(person)
	if err != nil {
		item.PersonGap = Told(err)
		return
	}
	e.Person = m
	on := onMachine(e)
	item.Effort = byShare(e, on.Effort, share)
	for _, j := range on.Joints {
		item.Joints = append(item.Joints, api.ComparedJoint{Joint: j.Joint, Moment: byShare(e, j.Moment, newtons), Effort: byShare(e, j.Effort, share)})
	}
}

// byShare reads a column of the curve's positions at even shares of its travel,
// straight between positions; null where either neighbour is.
func byShare(e *evaluation.Evaluation, column []*float64, round func(float64) float64) []*float64 {
	travel := e.Curve.Travel
	out := make([]*float64, axisPoints)
	for k := range out {
		s := e.Curve.Length() * float64(k) / (axisPoints - 1)
		i := min(max(sort.SearchFloat64s(travel, s), 1), len(travel)-1)
		if a, b := column[i-1], column[i]; a != nil && b != nil {
			t := (s - travel[i-1]) / (travel[i] - travel[i-1])
			x := round(*a*(1-t) + *b*t)
			out[k] = &x
		}
	}
	return out
}
