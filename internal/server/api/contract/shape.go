package contract

import (
	"fmt"
	"reflect"
	"slices"
	"strings"

	"steelyard/internal/server/api"
)

// field is a struct field as JSON shows it.
type field struct {
	name     string // in JSON
	words    string
	typ      reflect.Type // without the pointer
	optional bool         // may be left out
	nullable bool         // may be null
}

// shapes is every named type that a route mentions.
type shapes struct {
	*comments
	named []reflect.Type // by name
}

// shapesOf reads the comments in folder and collects the types of all routes.
func shapesOf(folder string) (*shapes, error) {
	c, err := read(folder)
	if err != nil {
		return nil, err
	}
	s := &shapes{comments: c}
	for _, v := range []any{api.Problem{}, api.Progress{}} {
		s.collect(reflect.TypeOf(v))
	}
	for _, r := range api.Routes {
		for _, v := range []any{r.In, r.Out, r.Done} {
			if v != nil {
				s.collect(reflect.TypeOf(v))
			}
		}
	}
	slices.SortFunc(s.named, func(a, b reflect.Type) int { return strings.Compare(a.Name(), b.Name()) })
	return s, nil
}

func ours(t reflect.Type) bool { return t.PkgPath() == reflect.TypeFor[api.Route]().PkgPath() }

// collect adds t and all it is made of.
func (s *shapes) collect(t reflect.Type) {
	if ours(t) {
		if slices.Contains(s.named, t) {
			return
		}
		s.named = append(s.named, t)
	}
	switch t.Kind() {
	case reflect.Pointer, reflect.Slice, reflect.Array, reflect.Map:
		s.collect(t.Elem())
	case reflect.Struct:
		for i := range t.NumField() {
			s.collect(t.Field(i).Type)
		}
	}
}

// embedded returns the structs that t takes its first fields from.
func embedded(t reflect.Type) []reflect.Type {
	var out []reflect.Type
	for i := range t.NumField() {
		if f := t.Field(i); f.Anonymous {
			out = append(out, f.Type)
		}
	}
	return out
}

// own returns t's own fields; embedded ones are left out.
func (s *shapes) own(t reflect.Type) []field {
	var out []field
	for i := range t.NumField() {
		f := t.Field(i)
		if f.Anonymous {
			continue
		}
		name, rest, _ := strings.Cut(f.Tag.Get("json"), ",")
		if name == "" || name == "-" {
			panic(fmt.Sprintf("contract: field %s.%s has no name in JSON", t.Name(), f.Name))
		}
		g := field{name: name, words: s.comments.fields[t.Name()+"."+f.Name], typ: f.Type, optional: rest == "omitempty"}
		if f.Type.Kind() == reflect.Pointer {
			g.typ, g.nullable = f.Type.Elem(), !g.optional
		}
		out = append(out, g)
	}
	return out
}
