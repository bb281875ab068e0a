package api

// Route is one thing the server can be asked.
type Route struct {
	Method string
	Path   string // as http.ServeMux takes it
	About  string
	Query  []Param
	In     any      // zero value of the body; nil for none
	Upload []string // instead: media types of a raw body
	Out    any      // zero value of the answer; nil for none
	Sends  []string // instead: media types of a raw answer
	Done   any      // of a route that answers by events: zero value of the last
	Line   bool     // keeps a line open, on which In is asked and Out answered any number of times
}

// Pattern returns the route as http.ServeMux takes it.
func (r Route) Pattern() string { return r.Method + " " + r.Path }

// Param is a query parameter.
type Param struct {
	Name  string
	About string
	Many  bool // may be repeated
}

// Media types.
const (
	JSON   = "application/json"
	YAML   = "application/yaml"
	Zip    = "application/zip"
	HTML   = "text/html"
	Events = "text/event-stream"
)

var (
	settings = Param{Name: "set", About: "name=value of a setting that differs from its default", Many: true}
	tempo    = Param{Name: "tempo", About: "seconds up, pause, down, pause, such as 2-0-2-0"}
	imperial = Param{Name: "units", About: "imperial shows pounds and inches"}
	person   = Param{Name: "person", About: "id of a person's sheet, to be put on every machine"}
	revision = Param{Name: "revision", About: "the write was made from"}
)

// Routes lists everything the server can be asked under /api.
//
// A route with Done answers by server-sent events: any number of `progress`
// (a [Progress]), then `done`, or `failed` (a [Problem]). Whoever asked stops
// the work by closing the connection.
//
// A route with Line answers by a WebSocket (RFC 6455): one text message for each
// question and one for its answer, in order.
var Routes = []Route{
	{Method: "POST", Path: "/api/session", About: "Trade the token for a cookie.", In: Session{}},
	{Method: "GET", Path: "/api/room", About: "List everything stored.", Query: []Param{person}, Out: Room{}},
	{Method: "POST", Path: "/api/demo", About: "Bring the demo room back, or take it away.", Query: []Param{person}, In: Demo{}, Out: Room{}},

	{Method: "POST", Path: "/api/sheets", About: "Store a new sheet of any kind.", In: NewSheet{}, Out: Saved{}},
	{Method: "GET", Path: "/api/sheets/{id}", About: "Get a sheet.", Out: Sheet{}},
	{Method: "PUT", Path: "/api/sheets/{id}", About: "Replace a sheet's text.", In: Write{}, Out: Saved{}},
	{Method: "PATCH", Path: "/api/sheets/{id}", About: "Edit single values of a sheet.", In: Change{}, Out: Saved{}},
	{Method: "DELETE", Path: "/api/sheets/{id}", About: "Remove a sheet; it can be brought back.", Query: []Param{revision, person}, Out: Room{}},
	{Method: "POST", Path: "/api/sheets/{id}/recover", About: "Bring a removed sheet back.", Out: Saved{}},
	{Method: "POST", Path: "/api/sheets/{id}/forget", About: "Erase a removed sheet and its history for good.", Out: Room{}},
	{Method: "POST", Path: "/api/sheets/{id}/undo", About: "Undo the last change.", In: Step{}, Out: Saved{}},
	{Method: "POST", Path: "/api/sheets/{id}/redo", About: "Do the undone change again.", In: Step{}, Out: Saved{}},
	{Method: "GET", Path: "/api/sheets/{id}/history", About: "List the latest 200 states a sheet has had.", Out: History{}},
	{Method: "GET", Path: "/api/sheets/{id}/history/{revision}", About: "Get the text a sheet had.", Sends: []string{YAML}},
	{Method: "GET", Path: "/api/sheets/{id}/changes", About: "List what was changed in the latest 200 steps.", Out: Changes{}},
	{Method: "PUT", Path: "/api/sheets/{id}/backdrop", About: "Lay a photo behind a machine's drawing.", In: SetBackdrop{}, Out: Sheet{}},
	{Method: "GET", Path: "/api/sheets/{id}/readings", About: "Get the forces read off a scale at a machine.", Out: ForceReadings{}},
	{Method: "PUT", Path: "/api/sheets/{id}/readings", About: "Replace the forces read off a scale at a machine.", In: ForceReadings{}, Out: ForceReadings{}},
	{Method: "GET", Path: "/api/example/{kind}", About: "Get a commented example sheet.", Sends: []string{YAML}},

	{Method: "POST", Path: "/api/preview", About: "Evaluate a machine quickly, storing nothing: for every move of a finger.", In: Ask{}, Out: Preview{}},
	{Method: "GET", Path: "/api/line", About: "Ask for previews one after the other over a line that stays open.", In: Ask{}, Out: Reply{}, Line: true},
	{Method: "POST", Path: "/api/evaluate", About: "Evaluate a machine with its sampled error band; takes seconds.", In: Ask{}, Done: Preview{}},
	{Method: "POST", Path: "/api/compare", About: "Compare up to six machines or settings.", In: Compare{}, Out: Comparison{}},
	{Method: "POST", Path: "/api/person", About: "Read a person's sheet, storing nothing.", In: AskPerson{}, Out: PersonSheet{}},
	{Method: "POST", Path: "/api/explain", About: "Present one stroke, step by step.", In: Ask{}, Out: Explanation{}},

	{Method: "GET", Path: "/api/families", About: "List what a machine can be built from.", Out: Families{}},
	{Method: "POST", Path: "/api/families/{id}", About: "Make a sheet from tapped points and numbers, storing nothing.", In: Build{}, Out: Preview{}},

	{Method: "POST", Path: "/api/photos", About: "Store a photo, up to 25 MB and 50 megapixels.", Upload: []string{"image/jpeg", "image/png"}, Out: Photo{}},
	{Method: "GET", Path: "/api/photos/{id}", About: "Get a photo.", Sends: []string{"image/jpeg", "image/png"}},
	{Method: "POST", Path: "/api/survey", About: "Measure places on a photo.", In: Survey{}, Out: Surveyed{}},

	{Method: "GET", Path: "/api/sheets/{id}/report/{ext}", About: "Download a report: html, pdf, svg or png.", Query: []Param{settings, tempo, imperial, person},
		Sends: []string{HTML, "application/pdf", "image/svg+xml", "image/png"}},
	{Method: "GET", Path: "/api/export.zip", About: "Download every sheet and photo as one archive.", Sends: []string{Zip}},
	{Method: "POST", Path: "/api/import", About: "Read an archive; it is taken as a whole or not at all.", Query: []Param{person}, Upload: []string{Zip}, Out: Room{}},
	{Method: "GET", Path: "/api/openapi.json", About: "Get this list as an OpenAPI document.", Sends: []string{JSON}},
}
