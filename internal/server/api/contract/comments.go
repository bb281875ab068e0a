package contract

import (
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
)

// comments is what the source of package api says and its types do not.
type comments struct {
	types  map[string]string   // by type
	fields map[string]string   // by type.Field
	values map[string][]string // by type: its constants, in order
}

// read reads the comments and constants of the Go files in a folder.
func read(folder string) (*comments, error) {
	files, err := filepath.Glob(filepath.Join(folder, "*.go"))
	if err != nil {
		return nil, err
	}
	if len(files) == 0 {
		return nil, fmt.Errorf("contract: no Go files in %s", folder)
	}
	c := &comments{types: map[string]string{}, fields: map[string]string{}, values: map[string][]string{}}
	for _, name := range files {
		if strings.HasSuffix(name, "_test.go") {
			continue
		}
		f, err := parser.ParseFile(token.NewFileSet(), name, nil, parser.ParseComments)
		if err != nil {
			return nil, err
		}
		for _, d := range f.Decls {
			if g, ok := d.(*ast.GenDecl); ok {
				c.declaration(g)
			}
		}
	}
	return c, nil
}

func (c *comments) declaration(g *ast.GenDecl) {
	for _, s := range g.Specs {
		switch s := s.(type) {
		case *ast.TypeSpec:
			c.typed(g, s)
		case *ast.ValueSpec:
			c.constants(g, s)
		}
	}
}

func (c *comments) typed(g *ast.GenDecl, s *ast.TypeSpec) {
	doc := s.Doc
	if doc == nil {
		doc = g.Doc
	}
	c.types[s.Name.Name] = plain(doc)
	st, ok := s.Type.(*ast.StructType)
	if !ok {
		return
	}
	for _, f := range st.Fields.List {
		words := plain(f.Comment)
		if words == "" {
			words = plain(f.Doc)
		}
		for _, n := range f.Names {
			c.fields[s.Name.Name+"."+n.Name] = words
		}
	}
}

// constants collects the texts that a named string type can be.
func (c *comments) constants(g *ast.GenDecl, s *ast.ValueSpec) {
	of, ok := s.Type.(*ast.Ident)
	if g.Tok != token.CONST || !ok {
		return
	}
	for _, v := range s.Values {
		if lit, ok := v.(*ast.BasicLit); ok && lit.Kind == token.STRING {
			text, _ := strconv.Unquote(lit.Value) // the parser has read it already
			c.values[of.Name] = append(c.values[of.Name], text)
		}
	}
}

var brackets = regexp.MustCompile(`\[(\w+)\]`)

// plain returns a comment as one line without Go's links.
func plain(g *ast.CommentGroup) string {
	return brackets.ReplaceAllString(strings.Join(strings.Fields(g.Text()), " "), "$1")
}
