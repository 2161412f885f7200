package lsp

import (
	"crypto/sha256"
	"encoding/hex"

	"go.lsp.dev/protocol"

	"fairlead/cmd/internal/ide"
	"fairlead/lang/diag"
)

// severities are those of the protocol.
var severities = map[diag.Severity]protocol.DiagnosticSeverity{
	diag.Error:   protocol.DiagnosticSeverityError,
	diag.Warning: protocol.DiagnosticSeverityWarning,
	diag.Advice:  protocol.DiagnosticSeverityInformation,
}

// source says who found it.
const findingSource = "fairlead"

// finding makes a diagnostic of the protocol.
func (c *converter) finding(d diag.Diagnostic) protocol.Diagnostic {
	client := c.server.client
	out := protocol.Diagnostic{
		Range: c.rangeOf(d.Place), Severity: severities[d.Severity], Code: protocol.String(d.Rule),
		Source: protocol.NewOptional(findingSource), Message: protocol.String(d.Message),
	}
	if client.links {
		if page, ok := ide.PageOf(d.Rule); ok {
			out.CodeDescription.Href, _ = c.server.uriOf(page)
		}
	}
	if client.tags && d.Rule == "unused-part" {
		out.Tags = protocol.NewDiagnosticTags(protocol.DiagnosticTagUnnecessary)
	}
	for _, r := range d.Related {
		if at, ok := c.location(r.Place); ok && client.related {
			out.RelatedInformation = append(out.RelatedInformation,
				protocol.DiagnosticRelatedInformation{Location: at, Message: r.Message})
		}
	}
	return out
}

// findings makes diagnostics of what was found; never nil.
func (c *converter) findings(list []diag.Diagnostic) []protocol.Diagnostic {
	out := []protocol.Diagnostic{}
	for _, d := range list {
		out = append(out, c.finding(d))
	}
	return out
}

// digest names a list of findings, so that the same ones need not be sent again.
func digest(list []protocol.Diagnostic) string {
	b, err := protocol.Marshal(list)
	if err != nil {
		return ""
	}
	sum := sha256.Sum256(b)
	return hex.EncodeToString(sum[:12])
}
