package api

import _ "embed"

// OpenAPI is the list of routes as an OpenAPI 3.1 document.
//
//go:embed openapi.json
var OpenAPI []byte
