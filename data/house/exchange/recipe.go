package exchange

import (
	"bytes"
	"encoding/json"
	"html"
	"io"
	"strings"

	"counterpour/data/house"
	"counterpour/flavor"
	"counterpour/flavor/measure/draft"
	"counterpour/flavor/measure/draft/edit"
	"counterpour/flavor/measure/draft/names/naming"
	"counterpour/flavor/measure/draft/reading"
	"counterpour/flavor/measure/pattern"
)

const schemaOrg = "https://schema.org"

// recipe is the part of schema.org's Recipe that is written here.
type recipe struct {
	Context      string   `json:"@context,omitempty"`
	Type         string   `json:"@type"`
	Identifier   string   `json:"identifier,omitempty"`
	Name         string   `json:"name"`
	Description  string   `json:"description,omitempty"`
	Category     string   `json:"recipeCategory"`
	Yield        string   `json:"recipeYield"`
	Ingredients  []string `json:"recipeIngredient"`
	Instructions []step   `json:"recipeInstructions"`
}

type step struct {
	Type string `json:"@type"`
	Text string `json:"text"`
}

// WriteRecipes writes specs as schema.org Recipe documents in JSON-LD. The ingredients
// are lines of the text form, so that amounts and units read back unchanged. It fails
// with [house.ErrInvalid] if the shelf lacks an ingredient.
func WriteRecipes(w io.Writer, specs []house.Spec, shelf *house.Shelf) error {
	list := []recipe{}
	for _, s := range specs {
		r, err := toRecipe(s, shelf)
		if err != nil {
			return err
		}
		list = append(list, r)
	}
	if len(list) == 1 {
		list[0].Context = schemaOrg
		return writeJSON(w, list[0])
	}
	return writeJSON(w, struct {
		Context string   `json:"@context"`
		Graph   []recipe `json:"@graph"`
	}{schemaOrg, list})
}

func toRecipe(s house.Spec, shelf *house.Shelf) (recipe, error) {
	spec, err := s.Flavor(shelf)
	if err != nil {
		return recipe{}, err
	}
	r := recipe{Type: "Recipe", Identifier: s.ID, Name: s.Name, Description: s.Note, Category: "Drink", Yield: "1 drink"}
	lines := strings.Split(strings.TrimSuffix(edit.Format(withoutName(spec)), "\n"), "\n")
	r.Ingredients = lines[:len(spec.Pours)]
	for _, l := range lines[len(spec.Pours):] {
		r.Instructions = append(r.Instructions, step{"HowToStep", l})
	}
	return r, nil
}

// withoutName returns a spec without its name, so that its text has only pours and
// method.
func withoutName(s flavor.Spec) flavor.Spec {
	s.Name = ""
	return s
}

// foreign is a Recipe document from any other program.
type foreign struct {
	Type         json.RawMessage   `json:"@type"`
	Graph        []json.RawMessage `json:"@graph"`
	Identifier   json.RawMessage   `json:"identifier"`
	Name         json.RawMessage   `json:"name"`
	Description  json.RawMessage   `json:"description"`
	Ingredients  json.RawMessage   `json:"recipeIngredient"`
	OldName      json.RawMessage   `json:"ingredients"` // the former name of the field in schema.org
	Instructions json.RawMessage   `json:"recipeInstructions"`
}

// ReadRecipes reads schema.org Recipe documents: a single one, a list or a graph, among
// other data. It takes method and service from the instructions. Recipes are numbered
// from 1, in order.
func ReadRecipes(r io.Reader, f naming.Finder) (*Reading, error) {
	text, err := readAll(r)
	if err != nil {
		return nil, err
	}
	if !json.Valid(text) {
		var v any
		return nil, unreadable("this is not JSON: %s", jsonPlace(text, json.Unmarshal(text, &v)))
	}
	out, found := &Reading{}, 0
	collect(text, 0, func(d foreign) {
		found++
		out.readRecipe(found, d, f)
	})
	if found == 0 {
		return nil, unreadable("there is no Recipe in this document; it should say \"@type\": \"Recipe\"")
	}
	return out.done(), nil
}

// maxDepth limits nested graphs.
const maxDepth = 8

func collect(text []byte, depth int, each func(foreign)) {
	var list []json.RawMessage
	if depth > maxDepth {
		return
	}
	if json.Unmarshal(text, &list) == nil {
		for _, raw := range list {
			collect(raw, depth+1, each)
		}
		return
	}
	var d foreign
	if json.Unmarshal(text, &d) != nil {
		return
	}
	for _, t := range texts(d.Type) {
		if t == "Recipe" || strings.HasSuffix(t, "schema.org/Recipe") {
			each(d)
			return
		}
	}
	for _, raw := range d.Graph {
		collect(raw, depth+1, each)
	}
}

func (r *Reading) readRecipe(number int, d foreign, f naming.Finder) {
	name := first(texts(d.Name))
	lines := texts(d.Ingredients)
	if len(lines) == 0 {
		lines = texts(d.OldName)
	}
	spec, err := readParts(lines, texts(d.Instructions), f)
	if err != nil {
		r.bad(number, name, faultText(err))
		return
	}
	spec.Name = name
	for _, n := range spec.Notes {
		r.Notes = append(r.Notes, name+": "+n)
	}
	id := first(texts(d.Identifier))
	if house.Slug(id) != id {
		id = "" // an identifier of another system
	}
	kept := house.FromSpec(id, spec)
	kept.Note = strings.Join(texts(d.Description), "\n")
	r.add(number, kept)
}

// texts returns the strings in a value: a string, a list, or an object with a text, name
// or value, at any depth.
func texts(raw json.RawMessage) []string {
	raw = bytes.TrimSpace(raw)
	var s string
	if json.Unmarshal(raw, &s) == nil && len(raw) > 0 && raw[0] == '"' {
		return []string{s}
	}
	var list []json.RawMessage
	if json.Unmarshal(raw, &list) == nil {
		var out []string
		for _, r := range list {
			out = append(out, texts(r)...)
		}
		return out
	}
	var o struct {
		Text  json.RawMessage `json:"text"`
		Steps json.RawMessage `json:"itemListElement"`
		Value json.RawMessage `json:"value"`
		Name  json.RawMessage `json:"name"`
	}
	if json.Unmarshal(raw, &o) != nil {
		return nil
	}
	for _, r := range []json.RawMessage{o.Text, o.Steps, o.Value, o.Name} {
		if t := texts(r); len(t) > 0 {
			return t
		}
	}
	return nil
}

func first(list []string) string {
	if len(list) == 0 {
		return ""
	}
	return list[0]
}

var tag = pattern.Of(`<[^>]*>`)

// plain removes HTML markup.
func plain(s string) string {
	return strings.Join(strings.Fields(html.UnescapeString(tag.ReplaceAllString(s, " "))), " ")
}

// readParts reads the ingredients and the instructions of a recipe as one draft. An
// instruction that mentions an ingredient of the list pours nothing more.
func readParts(ingredients, instructions []string, f naming.Finder) (flavor.Spec, error) {
	var text strings.Builder
	for _, l := range ingredients {
		text.WriteString(plain(l) + "\n")
	}
	text.WriteString("method:\n")
	for _, l := range instructions {
		text.WriteString(plain(l) + "\n")
	}
	read, err := reading.Resolve(draft.ParsePours(text.String()), f)
	if err != nil {
		return flavor.Spec{}, err
	}
	return read.Spec, read.Err()
}
