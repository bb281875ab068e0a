package sheet

import (
	"fmt"
	"strconv"
	"strings"
)

// The ways a rope passes a sheave or cam: the first four tell which face of it
// the rope touches in the measured pose, the last two which way round it goes,
// seen from the person's right. See sides.go.
var passes = []string{"over", "under", "behind", "in front of", "clockwise round", "counter-clockwise round"}

// mostStations is the number of places on one rope.
const mostStations = 50

// readRopes reads `ropes:`, each a list of stations from end to end.
func (r *reader) readRopes(n *node) {
	r.named(n, "ropes", func(name string, e entry) {
		what := fmt.Sprintf("rope %q", name)
		r.plan.ropes = append(r.plan.ropes, rope{name: name, route: r.route(e.value, what), at: e.value})
	})
}

// route reads the stations of a rope, or of a spring that acts along a line.
func (r *reader) route(n *node, what string) []station {
	if n.kind != sequence || len(n.items) < 2 {
		r.fault(n, fmt.Sprintf("%s is %s", what, seen(n)), "it is a list of at least two places, from end to end",
			"write [stack top, over top sheave, grip]")
		return nil
	}
	if len(n.items) > mostStations {
		r.fault(n, fmt.Sprintf("%s passes %d places", what, len(n.items)), fmt.Sprintf("it passes at most %d", mostStations), "leave out those it does not touch")
		return nil
	}
	var route []station
	for i, item := range n.items {
		s, ok := r.station(r.value(item), what, i > 0 && i < len(n.items)-1)
		if !ok {
			return nil
		}
		route = append(route, s)
	}
	r.routes = append(r.routes, routed{n, route, what})
	return route
}

// station reads one place: a point's name; `over top sheave`; or a group of
// keys, when more is to be said about it.
func (r *reader) station(n *node, what string, between bool) (station, bool) {
	s := station{point: nowhere, outline: noOutline, tied: none, tiedAt: nowhere, loss: noLoss}
	if n.kind == mapping {
		return s, r.stationGroup(&s, n, what, between)
	}
	text := n.text
	_, isPoint := r.pointIDs[text]
	if pass, name, ok := cutPass(text); ok && !isPoint {
		return s, r.passing(&s, n, pass, name, what, between) && r.needsTie(&s, n, what, between)
	}
	if _, isOutline := r.outlineIDs[text]; isOutline && (between || !isPoint) {
		r.fault(n, fmt.Sprintf("%s goes to %q, which is a sheave or cam", what, text), "a rope passes it on one side",
			fmt.Sprintf("write over, under, behind or in front of %s; or {at: %s} for a point of that name", text, text))
		return s, false
	}
	s.point = r.point(n, "a place on "+what)
	if s.point == nowhere {
		return s, false
	}
	f := &fields{r: r, node: &node{kind: mapping}, kind: what}
	var ok bool
	s.link, ok = f.carrier(s.point, n)
	s.name = text
	return s, ok
}

// cutPass splits "over top sheave".
func cutPass(text string) (pass, name string, ok bool) {
	for _, p := range passes {
		if rest, ok := strings.CutPrefix(text, p+" "); ok {
			return p, strings.TrimSpace(rest), true
		}
	}
	return "", "", false
}

// passing fills in a station on a sheave or cam.
func (r *reader) passing(s *station, n *node, pass, name, what string, between bool) bool {
	id, ok := r.outlineIDs[name]
	if !ok {
		r.fault(n, fmt.Sprintf("%s passes %s %q", what, pass, shorten(name)), "no sheave or cam has that name",
			r.suggest(name, keys(r.outlineIDs), "add it under `sheaves:` or `cams:`"))
		return false
	}
	o := &r.plan.outlines[id]
	o.used = true
	s.name, s.link, s.point, s.outline, s.pass = name, o.link, o.axis, id, pass
	if between {
		s.loss = o.loss
	}
	return s.point != nowhere
}

func (r *reader) needsTie(s *station, n *node, what string, between bool) bool {
	if between || s.tied != none || s.tiedAt != nowhere {
		return true
	}
	r.fault(n, fmt.Sprintf("%s ends on %q", what, s.name), "where it is fixed there has to be known",
		fmt.Sprintf("write {%s: %s, tied: 200 deg} with the direction from its axis, or tied: and the name of a point", s.pass, s.name))
	return false
}

// stationGroup reads {over: cam, tied: 200 deg, turns: 1} or {at: point, on: link}.
func (r *reader) stationGroup(s *station, n *node, what string, between bool) bool {
	f := r.fields(n, "a place on "+what, "")
	f.onlyOne(append([]string{"at"}, passes...)...)
	ok := false
	for _, pass := range passes {
		if at := f.take(pass); at != nil {
			ok = r.passing(s, at, pass, at.text, what, between)
		}
	}
	if at := f.take("at"); at != nil && s.outline == noOutline {
		s.point, s.name = r.point(at, "a place on "+what), at.text
		s.link, ok = f.carrier(s.point, at)
		if slip := f.number("slip", friction); slip != none {
			s.loss.slip = slip
		}
	}
	if s.outline != noOutline && !between {
		r.tie(s, f)
		ok = r.needsTie(s, n, what, between) && ok
	}
	f.close()
	return ok
}

// tie reads where a rope's end is fixed to an outline, and the whole turns that
// are wound on there.
func (r *reader) tie(s *station, f *fields) {
	if n := f.take("tied"); n != nil {
		if _, ok := r.pointIDs[n.text]; ok && n.kind == scalar {
			s.tiedAt = r.point(n, f.of("tied"))
		} else {
			s.tied = f.number("tied", angle)
		}
	}
	if n := f.take("turns"); n != nil {
		k, err := strconv.Atoi(n.text)
		if err != nil || k < 0 || k > 50 {
			r.fault(n, fmt.Sprintf("%s is %s", f.of("turns"), seen(n)), "whole turns wound on are 0 to 50", "count them")
			return
		}
		s.turns = k
	}
}
