package contract

import (
	"bytes"
	"encoding/json"
	"fmt"
	"reflect"
	"strings"

	"steelyard/internal/server/api"
)

// object is a JSON object; encoding/json writes its keys in order.
type object = map[string]any

// OpenAPI returns the routes and types as an OpenAPI 3.1 document, with the
// comments of the Go types in folder.
//
// Source: OpenAPI Specification 3.1.0, whose schemas are JSON Schema 2020-12.
func OpenAPI(folder string) ([]byte, error) {
	s, err := shapesOf(folder)
	if err != nil {
		return nil, err
	}
	schemas, paths := object{}, object{}
	for _, t := range s.named {
		schemas[t.Name()] = s.schema(t)
	}
	for _, r := range api.Routes {
		if paths[r.Path] == nil {
			paths[r.Path] = object{}
		}
		paths[r.Path].(object)[strings.ToLower(r.Method)] = operation(r)
	}
	doc := object{
		"openapi": "3.1.0",
		"info": object{"title": "Steelyard", "version": "1",
			"description": "What the page asks of the program on the same machine. SI units; x forward, y up, seen from the person's right, counter-clockwise positive."},
		"paths": paths,
		"components": object{"schemas": schemas,
			"securitySchemes": object{"cookie": object{"type": "apiKey", "in": "cookie", "name": "steelyard"}}},
		"security": []any{object{"cookie": []string{}}},
	}
	var b bytes.Buffer
	out := json.NewEncoder(&b)
	out.SetEscapeHTML(false)
	out.SetIndent("", " ")
	err = out.Encode(doc)
	return b.Bytes(), err
}

func operation(r api.Route) object {
	op := object{"summary": r.About, "operationId": operationID(r)}
	var params []any
	for _, m := range pathParams.FindAllStringSubmatch(r.Path, -1) {
		params = append(params, object{"name": m[1], "in": "path", "required": true, "schema": object{"type": "string"}})
	}
	for _, p := range r.Query {
		schema := object{"type": "string"}
		if p.Many {
			schema = object{"type": "array", "items": schema}
		}
		params = append(params, object{"name": p.Name, "in": "query", "description": p.About, "schema": schema})
	}
	if params != nil {
		op["parameters"] = params
	}
	if r.In != nil && !r.Line {
		op["requestBody"] = object{"required": true, "content": object{api.JSON: object{"schema": ref(reflect.TypeOf(r.In))}}}
	} else if r.Upload != nil {
		op["requestBody"] = object{"required": true, "content": raw(r.Upload)}
	}
	op["responses"] = responses(r)
	return op
}

func operationID(r api.Route) string {
	id := strings.ToLower(r.Method)
	for part := range strings.SplitSeq(strings.Trim(r.Path, "/"), "/") {
		id += "_" + strings.NewReplacer("{", "", "}", "", ".", "_").Replace(part)
	}
	return id
}

func responses(r api.Route) object {
	failed := object{"description": "It failed, and why.", "content": object{api.JSON: object{"schema": ref(reflect.TypeFor[api.Problem]())}}}
	done := object{"description": "Done."}
	status := "200"
	switch {
	case r.Line:
		status = "101"
		done["description"] = fmt.Sprintf("A WebSocket (RFC 6455): each text message asks (%s), and one answers it (%s), in order.",
			reflect.TypeOf(r.In).Name(), reflect.TypeOf(r.Out).Name())
	case r.Out != nil:
		done["content"] = object{api.JSON: object{"schema": ref(reflect.TypeOf(r.Out))}}
	case r.Done != nil:
		done["content"] = object{api.Events: object{"schema": object{"type": "string"}}}
		done["description"] = fmt.Sprintf("Events: progress (Progress), then done (%s) or failed (Problem).", reflect.TypeOf(r.Done).Name())
	case r.Sends != nil:
		done["content"] = raw(r.Sends)
	default:
		status = "204"
	}
	return object{status: done, "default": failed}
}

func raw(types []string) object {
	out := object{}
	for _, t := range types {
		out[t] = object{}
	}
	return out
}

func ref(t reflect.Type) object { return object{"$ref": "#/components/schemas/" + t.Name()} }

// schema describes a named type.
func (s *shapes) schema(t reflect.Type) object {
	out := s.shape(t)
	if words := s.types[t.Name()]; words != "" {
		out["description"] = words
	}
	return out
}

func (s *shapes) shape(t reflect.Type) object {
	switch t.Kind() {
	case reflect.String:
		if v := s.values[t.Name()]; v != nil {
			return object{"type": "string", "enum": v}
		}
		return object{"type": "string"}
	case reflect.Bool:
		return object{"type": "boolean"}
	case reflect.Int:
		return object{"type": "integer"}
	case reflect.Float64:
		return object{"type": "number"}
	case reflect.Pointer:
		return nullable(s.use(t.Elem()))
	case reflect.Slice:
		return object{"type": "array", "items": s.use(t.Elem())}
	case reflect.Array:
		return object{"type": "array", "items": s.use(t.Elem()), "minItems": t.Len(), "maxItems": t.Len()}
	case reflect.Map:
		return object{"type": "object", "additionalProperties": s.use(t.Elem())}
	case reflect.Struct:
		return s.structure(t)
	}
	panic(fmt.Sprintf("contract: no schema for %v", t))
}

// use refers to a type by its name if it is ours.
func (s *shapes) use(t reflect.Type) object {
	if ours(t) {
		return ref(t)
	}
	return s.shape(t)
}

func nullable(schema object) object {
	return object{"anyOf": []any{schema, object{"type": "null"}}}
}

func (s *shapes) structure(t reflect.Type) object {
	props, required := object{}, []string{}
	for _, f := range s.own(t) {
		p := s.use(f.typ)
		if f.nullable {
			p = nullable(p)
		}
		if f.words != "" {
			p["description"] = f.words
		}
		props[f.name] = p
		if !f.optional {
			required = append(required, f.name)
		}
	}
	own := object{"type": "object", "properties": props, "required": required}
	from := embedded(t)
	if len(from) == 0 {
		own["additionalProperties"] = false
		return own
	}
	all := []any{}
	for _, e := range from {
		// An embedded type is written out, because its own description closes it.
		part := s.structure(e)
		delete(part, "additionalProperties")
		all = append(all, part)
	}
	return object{"allOf": append(all, own), "unevaluatedProperties": false}
}
