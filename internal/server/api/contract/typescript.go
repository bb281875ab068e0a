package contract

import (
	"fmt"
	"reflect"
	"regexp"
	"strings"

	"steelyard/internal/server/api"
)

const tsHead = `// Written from the Go types of internal/server/api by ` + "`go generate ./internal/server/api`" + `.
// Change those and run it again; a test refuses a stale file.
//
// Numbers are SI: m, kg, N, N·m, J, s, rad; x forward, y up, seen from the
// person's right, counter-clockwise positive.

`

// TypeScript returns the types of every request and answer, with the comments
// of the Go types in folder.
func TypeScript(folder string) ([]byte, error) {
	s, err := shapesOf(folder)
	if err != nil {
		return nil, err
	}
	var b strings.Builder
	b.WriteString(tsHead)
	for _, t := range s.named {
		s.tsType(&b, t)
	}
	tsRoutes(&b)
	return []byte(b.String()), nil
}

func (s *shapes) tsType(b *strings.Builder, t reflect.Type) {
	if words := s.types[t.Name()]; words != "" {
		fmt.Fprintf(b, "/** %s */\n", words)
	}
	switch t.Kind() {
	case reflect.Struct:
		s.tsInterface(b, t)
	case reflect.String:
		fmt.Fprintf(b, "export type %s = %s;\n\n", t.Name(), quotedList(s.values[t.Name()], " | "))
	default:
		fmt.Fprintf(b, "export type %s = %s;\n\n", t.Name(), tsShape(t))
	}
}

func (s *shapes) tsInterface(b *strings.Builder, t reflect.Type) {
	fmt.Fprintf(b, "export interface %s", t.Name())
	for i, e := range embedded(t) {
		fmt.Fprintf(b, "%s%s", []string{" extends ", ", "}[min(i, 1)], e.Name())
	}
	b.WriteString(" {\n")
	for _, f := range s.own(t) {
		if f.words != "" {
			fmt.Fprintf(b, "  /** %s */\n", f.words)
		}
		mark, null := "", ""
		if f.optional {
			mark = "?"
		}
		if f.nullable {
			null = " | null"
		}
		fmt.Fprintf(b, "  %s%s: %s%s;\n", f.name, mark, tsName(f.typ), null)
	}
	b.WriteString("}\n\n")
}

// tsName refers to a type by its name if it is ours.
func tsName(t reflect.Type) string {
	if ours(t) {
		return t.Name()
	}
	return tsShape(t)
}

func tsShape(t reflect.Type) string {
	switch t.Kind() {
	case reflect.String:
		return "string"
	case reflect.Bool:
		return "boolean"
	case reflect.Int, reflect.Float64:
		return "number"
	case reflect.Pointer:
		return "(" + tsName(t.Elem()) + " | null)"
	case reflect.Slice:
		return tsName(t.Elem()) + "[]"
	case reflect.Array:
		return "[" + strings.Repeat(tsName(t.Elem())+", ", t.Len()-1) + tsName(t.Elem()) + "]"
	case reflect.Map:
		return "Record<string, " + tsName(t.Elem()) + ">"
	}
	panic(fmt.Sprintf("contract: no TypeScript for %v", t))
}

var pathParams = regexp.MustCompile(`\{(\w+)\}`)

// tsRoutes writes one interface whose keys are the routes.
func tsRoutes(b *strings.Builder) {
	b.WriteString("/** What each route takes and gives: void for no body, Blob for a raw one. */\nexport interface Routes {\n")
	for _, r := range api.Routes {
		in, out := "void", "void"
		if r.In != nil {
			in = tsName(reflect.TypeOf(r.In))
		} else if r.Upload != nil {
			in = "Blob"
		}
		switch {
		case r.Out != nil:
			out = tsName(reflect.TypeOf(r.Out))
		case r.Done != nil:
			out = tsName(reflect.TypeOf(r.Done))
		case r.Sends != nil:
			out = "Blob"
		}
		var path []string
		for _, m := range pathParams.FindAllStringSubmatch(r.Path, -1) {
			path = append(path, m[1]+": string")
		}
		events := ""
		if r.Done != nil {
			events = " Answers by server-sent events: progress, then done or failed."
		}
		if r.Line {
			events = " Each message of a WebSocket asks one, and one answers it, in order."
		}
		fmt.Fprintf(b, "  /** %s%s */\n  %q: { path: { %s }; query: { %s }; in: %s; out: %s };\n",
			r.About, events, r.Pattern(), strings.Join(path, "; "), tsQuery(r.Query), in, out)
	}
	b.WriteString("}\n")
}

func tsQuery(ps []api.Param) string {
	var out []string
	for _, p := range ps {
		t := "string"
		if p.Many {
			t = "string[]"
		}
		out = append(out, p.Name+"?: "+t)
	}
	return strings.Join(out, "; ")
}

func quotedList(texts []string, between string) string {
	var out []string
	for _, t := range texts {
		out = append(out, fmt.Sprintf("%q", t))
	}
	return strings.Join(out, between)
}
