package index

import (
	"fmt"

	"github.com/blevesearch/bleve/v2"
	"github.com/blevesearch/bleve/v2/analysis/analyzer/custom"
	"github.com/blevesearch/bleve/v2/analysis/token/edgengram"
	"github.com/blevesearch/bleve/v2/analysis/token/lowercase"
	"github.com/blevesearch/bleve/v2/analysis/tokenizer/whitespace"
	"github.com/blevesearch/bleve/v2/mapping"
)

// The fields of a document. All words in them are folded.
const (
	fieldKey      = "key"       // own name and id, each as one term
	fieldAliasKey = "alias_key" // every alias as one term
	fieldName     = "name"      // words of the own name
	fieldAlias    = "alias"     // words of the aliases
	fieldTyping   = "typing"    // prefixes of the words of all names
	fieldWords    = "words"     // class, part, families, materials, making
	fieldClass    = "class"     // flavor.Class
	fieldFamily   = "family"    // families of its aroma
	fieldAllergen = "allergen"  // contained, possible or unstated
	fieldABV      = "abv"       // % vol
	fieldBitter   = "bitter"    // mg/L of quinine
)

// maxTyping is the longest prefix of a word that is indexed, in letters.
const maxTyping = 12

const (
	analyzerWords  = "words"
	analyzerTyping = "typing"
	filterTyping   = "beginnings"
)

// newMapping returns the bleve mapping. It has no dynamic fields, stored fields or term
// vectors: hits are only ids.
func newMapping() (*mapping.IndexMappingImpl, error) {
	m := bleve.NewIndexMapping()
	if err := addAnalyzers(m); err != nil {
		return nil, fmt.Errorf("index: mapping: %w", err)
	}
	doc := bleve.NewDocumentStaticMapping()
	for _, f := range []string{fieldKey, fieldAliasKey, fieldClass, fieldFamily, fieldAllergen} {
		doc.AddFieldMappingsAt(f, keywordField(f == fieldClass))
	}
	for _, f := range []string{fieldName, fieldAlias, fieldWords} {
		doc.AddFieldMappingsAt(f, textField(analyzerWords))
	}
	doc.AddFieldMappingsAt(fieldTyping, textField(analyzerTyping))
	for _, f := range []string{fieldABV, fieldBitter} {
		doc.AddFieldMappingsAt(f, numberField())
	}
	doc.AddSubDocumentMapping("_all", bleve.NewDocumentDisabledMapping()) // no composite field of all text
	m.DefaultMapping = doc
	m.StoreDynamic, m.IndexDynamic, m.DocValuesDynamic = false, false, false
	return m, nil
}

// addAnalyzers defines how text is split into terms. Folded text contains only letters,
// digits and spaces, so it is split at spaces only. Queries split their text in the same
// way and look up the same terms.
func addAnalyzers(m *mapping.IndexMappingImpl) error {
	err := m.AddCustomTokenFilter(filterTyping, map[string]any{
		"type": edgengram.Name, "min": 1.0, "max": float64(maxTyping)})
	if err != nil {
		return err
	}
	err = m.AddCustomAnalyzer(analyzerWords, map[string]any{
		"type": custom.Name, "tokenizer": whitespace.Name, "token_filters": []string{lowercase.Name}})
	if err != nil {
		return err
	}
	return m.AddCustomAnalyzer(analyzerTyping, map[string]any{
		"type": custom.Name, "tokenizer": whitespace.Name, "token_filters": []string{lowercase.Name, filterTyping}})
}

// keywordField maps a field whose whole value is one term. Only fields with facets need
// docValues.
func keywordField(docValues bool) *mapping.FieldMapping {
	f := bleve.NewKeywordFieldMapping()
	f.Store, f.IncludeTermVectors, f.IncludeInAll, f.DocValues = false, false, false, docValues
	return f
}

func textField(analyzer string) *mapping.FieldMapping {
	f := bleve.NewTextFieldMapping()
	f.Analyzer = analyzer
	f.Store, f.IncludeTermVectors, f.IncludeInAll, f.DocValues = false, false, false, false
	return f
}

func numberField() *mapping.FieldMapping {
	f := bleve.NewNumericFieldMapping()
	f.Store, f.IncludeInAll, f.DocValues = false, false, false
	return f
}
