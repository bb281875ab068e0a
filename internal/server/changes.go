package server

import (
	"fmt"
	"net/http"
	"slices"
	"strconv"
	"strings"
	"unicode"

	"steelyard/internal/server/api"
	"steelyard/internal/store"
	"steelyard/quantity"
	"steelyard/sheet"
)

// mostLines is how many changed values of one step are told one by one.
const mostLines = 6

// getChanges tells what was changed on a sheet, step by step.
func (s *Server) getChanges(w http.ResponseWriter, r *http.Request) error {
	all, err := s.Store.History(r.Context(), r.PathValue("id"), mostHistory+1)
	if err != nil {
		return err
	}
	return send(w, r, api.Changes{Steps: steps(all), Older: len(all) > mostHistory})
}

// getText sends the text a sheet had at a revision.
func (s *Server) getText(w http.ResponseWriter, r *http.Request) error {
	number, err := strconv.Atoi(r.PathValue("revision"))
	if err != nil {
		return store.ErrNotFound
	}
	text, err := s.Store.TextAt(r.Context(), r.PathValue("id"), number)
	if err != nil {
		return err
	}
	w.Header().Set("Content-Type", api.YAML)
	return write(w, r, http.StatusOK, []byte(text))
}

// steps tells the steps between revisions, newest first. Of more than
// mostHistory revisions the oldest only serves to be compared with.
func steps(all []store.Revision) []api.PastStep {
	out := []api.PastStep{}
	latest := document(all[0].Text)
	names, after := namesOf(latest), leavesOf(latest)
	for i, x := range all[:min(len(all), mostHistory)] {
		step := api.PastStep{Revision: x.Number, Saved: x.Saved, What: x.What, Changes: []string{}, Now: x.Text == all[0].Text}
		if i+1 < len(all) {
			before := leavesOf(document(all[i+1].Text))
			if x.Text != all[i+1].Text {
				step.Changes = differences(before, after, names)
			}
			after = before
			if x.What == "saved" && slices.ContainsFunc(all[i+1:], func(old store.Revision) bool { return old.Text == x.Text }) {
				step.What = "gone back"
			}
		}
		out = append(out, step)
	}
	return out
}

// document reads a text; nil if it cannot be read as a sheet.
func document(text string) *sheet.Document {
	d, err := sheet.Read("the sheet", []byte(text))
	if err != nil {
		return nil
	}
	return d
}

// leavesOf returns the single values of a document; nil if there is none.
func leavesOf(d *sheet.Document) []sheet.Leaf {
	if d == nil {
		return nil
	}
	return d.Leaves()
}

// number is what a sheet calls a number in words, and the unit it is read in.
type number struct {
	name string
	unit quantity.Unit
}

// namesOf returns the numbers of a usable machine sheet by their paths.
func namesOf(d *sheet.Document) map[string]number {
	out := map[string]number{}
	if d == nil || d.Kind != sheet.KindMachine {
		return out
	}
	m, err := d.Machine()
	if err != nil {
		return out
	}
	b, err := m.Build(nil)
	if err != nil {
		return out
	}
	for _, x := range b.Measurements {
		path := x.Path
		for axis, place := range map[string]string{".x": ".1", ".y": ".2"} { // leaves are counted
			if start, is := strings.CutSuffix(path, axis); is {
				path = start + place
			}
		}
		out[path] = number{x.Name, x.Unit}
	}
	return out
}

// differences tells how the values of one text differ from another's, in the
// order in which they stand.
func differences(before, after []sheet.Leaf, names map[string]number) []string {
	if before == nil || after == nil {
		return []string{"the text, which could not be read as a sheet before or after"}
	}
	old, now := byPath(before), byPath(after)
	var out []string
	for _, l := range before {
		if _, stays := now[l.Path]; !stays {
			out = append(out, fmt.Sprintf("%s: %s taken out", named(l.Path, names), short(l.Text)))
		}
	}
	for _, l := range after {
		switch was, there := old[l.Path]; {
		case !there:
			out = append(out, fmt.Sprintf("%s: %s put in", named(l.Path, names), short(l.Text)))
		case was != l.Text:
			out = append(out, fmt.Sprintf("%s: %s", named(l.Path, names), arrow(was, l.Text, names[l.Path].unit)))
		}
	}
	switch {
	case len(out) == 0:
		return []string{"comments or the order of the text"}
	case len(out) > mostLines:
		return append(out[:mostLines-1:mostLines-1], fmt.Sprintf("and %d more", len(out)-mostLines+1))
	}
	return out
}

func byPath(leaves []sheet.Leaf) map[string]string {
	out := map[string]string{}
	for _, l := range leaves {
		out[l.Path] = l.Text
	}
	return out
}

// named puts a path into words: the sheet's own name for the number, or else
// the keys that lead to it.
func named(path string, names map[string]number) string {
	if n := names[path].name; n != "" {
		return n
	}
	keys := strings.Split(strings.TrimSuffix(path, ".is"), ".")
	if len(keys) > 2 { // the group says no more than the rest does
		keys = keys[1:]
	}
	return strings.ReplaceAll(strings.Join(keys, ", "), "_", " ")
}

// arrow writes a change as "40 → 55 ± 3 mm": what both end with is said once,
// and the unit that a bare number is read in is added.
func arrow(was, is string, unit quantity.Unit) string {
	old, now := strings.Fields(was), strings.Fields(is)
	for len(old) > 1 && len(now) > 1 && old[len(old)-1] == now[len(now)-1] {
		old, now = old[:len(old)-1], now[:len(now)-1]
	}
	rest := strings.Join(strings.Fields(is)[len(now):], " ")
	out := short(strings.Join(old, " ")) + " → " + short(strings.TrimSpace(strings.Join(now, " ")+" "+rest))
	if symbol := unit.Symbol(); symbol != "" && !strings.ContainsFunc(is, unicode.IsLetter) && !strings.ContainsAny(is, "°\"'%") {
		out += " " + symbol
	}
	return out
}

// mostShown is how many characters of a value are shown.
const mostShown = 60

func short(text string) string {
	if r := []rune(text); len(r) > mostShown {
		return string(r[:mostShown]) + "…"
	}
	return text
}
