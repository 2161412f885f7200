package show

import (
	"encoding/json"
	"io"
	"net/url"
	"path/filepath"
	"strings"

	"fairlead/lang/diag"
	"fairlead/solve/report"
)

// The shape of the parameters of "textDocument/publishDiagnostics" of the Language
// Server Protocol, as far as a saved file has something for it.
type (
	published struct {
		URI         string             `json:"uri"`
		Diagnostics []publishedFinding `json:"diagnostics"`
	}
	publishedFinding struct {
		Range    report.Range       `json:"range"`
		Severity int                `json:"severity"`
		Code     string             `json:"code"`
		Source   string             `json:"source"`
		Message  string             `json:"message"`
		Related  []publishedRelated `json:"relatedInformation,omitempty"`
	}
	publishedRelated struct {
		Location location `json:"location"`
		Message  string   `json:"message"`
	}
	location struct {
		URI   string       `json:"uri"`
		Range report.Range `json:"range"`
	}
)

// protocolSeverity are the numbers of the protocol: error, warning, information.
var protocolSeverity = map[diag.Severity]int{diag.Error: 1, diag.Warning: 2, diag.Advice: 3}

// Publish writes what was found in one file as one JSON object on one line.
func Publish(w io.Writer, name string, list []diag.Diagnostic) error {
	out := published{URI: uriOf(name), Diagnostics: []publishedFinding{}}
	for _, d := range list {
		f := publishedFinding{Range: report.RangeOf(d.Place), Severity: protocolSeverity[d.Severity],
			Code: d.Rule, Source: "fairlead", Message: d.Message}
		for _, r := range d.Related {
			f.Related = append(f.Related, publishedRelated{
				location{uriOf(report.FileName(r.Place)), report.RangeOf(r.Place)}, r.Message})
		}
		out.Diagnostics = append(out.Diagnostics, f)
	}
	encoder := json.NewEncoder(w)
	encoder.SetEscapeHTML(false)
	return encoder.Encode(out)
}

// uriOf gives the file URI of a path (RFC 8089).
func uriOf(name string) string {
	if abs, err := filepath.Abs(name); err == nil {
		name = abs
	}
	path := filepath.ToSlash(name)
	if !strings.HasPrefix(path, "/") { // a drive letter
		path = "/" + path
	}
	return (&url.URL{Scheme: "file", Path: path}).String()
}
