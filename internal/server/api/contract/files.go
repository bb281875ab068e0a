package contract

// File is one that is written from package api.
type File struct {
	Path  string // from package api's folder
	Write func(folder string) ([]byte, error)
}

// Files lists them all.
var Files = []File{
	{"openapi.json", OpenAPI},
	{"../../../ui/src/api.ts", TypeScript},
}
