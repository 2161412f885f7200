// Package lsp is the edge of the Language Server Protocol: it reads what an editor
// sends, asks package ide, and writes the answers in the protocol's form.
//
// It is given two streams and gives nothing but what it writes to one of them. It is
// the only place that knows messages, URIs and UTF-16; each request has a file of its
// own. It computes nothing of rigs and finds nothing itself.
package lsp
