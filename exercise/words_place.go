package exercise

import (
	"fmt"

	"steelyard/human"
	"steelyard/planar"
	"steelyard/reference"
)

// faultWords flags joints past their range and positions the body cannot take,
// the worst of each kind.
func (r *Result) faultWords() []string {
	var out []string
	past, gaps := -1, 0
	first := -1
	for i := range r.Faults {
		switch f := &r.Faults[i]; {
		case f.Kind == PastRange && (past < 0 || f.By > r.Faults[past].By):
			past = i
		case !f.Placed():
			gaps++
			if first < 0 || f.By > r.Faults[first].By {
				first = i
			}
		}
	}
	if past >= 0 {
		out = append(out, fmt.Sprintf("CAUTION: %s, %s. Do not force it; change a setting or shorten the travel.", sentence(r.Faults[past].String()), r.where(past)))
	}
	if gaps > 0 {
		out = append(out, fmt.Sprintf("Impossible at %d of %d positions: %s, %s at the worst.", gaps, len(r.Faults), r.Faults[first], r.where(first)))
	}
	return out
}

// ankleWords says where the limit of a foot that bears load is what lets the
// ankle bend as far as it does.
func (r *Result) ankleWords() []string {
	person := r.Body.Person
	limit := r.Body.Ranges[human.AnkleDorsiflexion].Max
	free, ok := reference.RangeOfMotion(human.AnkleDorsiflex.String(), person.Sex, person.Age)
	if !ok || limit.Own() {
		return nil
	}
	most := planar.Angle(0)
	for i := range r.Placements {
		if r.Faults[i].Kind == NoFault {
			most = max(most, r.Placements[i].Leg.Ankle)
		}
	}
	if most <= planar.Angle(free.Mean) {
		return nil
	}
	return []string{fmt.Sprintf("The ankle bends to %.0f° with the heel down: more than the %.0f° usual of a foot that hangs free, within the %.0f° usual of one that bears load (%s, %v). If the heels lift, stop before that.",
		most.Degrees(), planar.Angle(free.Mean).Degrees(), limit.Angle.Degrees(), limit.Source.Text, limit.Source.Mark)}
}

// alignWords tells how far joint and axis are apart and how far the pad creeps.
func (r *Result) alignWords() []string {
	var out []string
	if r.Misaligned != nil {
		most := r.most(r.Misaligned)
		text := fmt.Sprintf("The %s is %.0f mm off the machine's axis at the most", r.axisJoint(), 1000*most)
		if most <= InLine {
			text = fmt.Sprintf("The %s is in line with the machine's axis (%.0f mm)", r.axisJoint(), 1000*most)
		}
		if creep := r.creep(); creep > 0.001 {
			text += fmt.Sprintf(", so the pad creeps %.0f mm along the limb", 1000*creep)
		}
		out = append(out, text+".")
	} else if creep := r.creep(); creep > 0.005 {
		out = append(out, fmt.Sprintf("The pad creeps %.0f mm along the limb.", 1000*creep))
	}
	return out
}

// tipWords says where a body that balances its load would tip over.
func (r *Result) tipWords() []string {
	foot := r.Body.Links.Foot
	worst, by := -1, 0.0
	for i, x := range r.Pressure {
		if beyond := max(-x, x-foot); r.Gap[i] == "" && beyond > by {
			worst, by = i, beyond
		}
	}
	if worst < 0 {
		return nil
	}
	which := "toes"
	if r.Pressure[worst] < 0 {
		which = "heels"
	}
	return []string{fmt.Sprintf("%s the balance lies %.0f mm beyond the %s: this person would tip over.", sentence(r.where(worst)), 1000*by, which)}
}

// most returns the greatest of a column where there is no gap.
func (r *Result) most(column []float64) float64 {
	most := 0.0
	for i, x := range column {
		if r.Gap[i] == "" {
			most = max(most, x)
		}
	}
	return most
}

// creep returns the way between the pad's extreme places along the limb, m.
func (r *Result) creep() float64 {
	if r.Creep == nil {
		return 0
	}
	low, high, some := 0.0, 0.0, false
	for i, x := range r.Creep {
		if r.Gap[i] != "" {
			continue
		}
		if !some {
			low, high, some = x, x, true
		}
		low, high = min(low, x), max(high, x)
	}
	return high - low
}

// axisJoint names the body joint that belongs to the machine's axis.
func (r *Result) axisJoint() string {
	switch r.Setup.Station.On {
	case OnShank:
		return "knee"
	case OnThigh, OnTrunk:
		return "hip"
	case OnUpperArm:
		return "shoulder"
	}
	switch {
	case r.Setup.Exercise.Limb() == human.Leg:
		return "knee"
	case catalogue[r.Setup.Exercise].elbowBack:
		return "shoulder"
	}
	return "elbow"
}
