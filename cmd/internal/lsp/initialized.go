package lsp

import (
	"context"
	"encoding/json"

	"go.lsp.dev/protocol"
)

// initialized asks the editor for its settings, and to tell of changes.
func (s *Server) initialized(*protocol.InitializedParams) {
	client := s.client
	s.errand(func(ctx context.Context) {
		var wanted []protocol.Registration
		if client.watches {
			wanted = append(wanted, protocol.Registration{ID: "files", Method: protocol.MethodWorkspaceDidChangeWatchedFiles,
				RegisterOptions: raw(protocol.DidChangeWatchedFilesRegistrationOptions{Watchers: []protocol.FileSystemWatcher{
					{GlobPattern: protocol.Pattern("**/*.{rig,md,markdown}")},
				}})})
		}
		if client.configurationChanges {
			wanted = append(wanted, protocol.Registration{ID: "settings", Method: protocol.MethodWorkspaceDidChangeConfiguration,
				RegisterOptions: raw(map[string]string{"section": section})})
		}
		if len(wanted) > 0 {
			_, err := s.conn.Call(ctx, protocol.MethodClientRegisterCapability, &protocol.RegistrationParams{Registrations: wanted}, nil)
			s.noteUnlessEnded(ctx, protocol.MethodClientRegisterCapability, err)
		}
		s.askSettings(ctx, client)
	})
}

// noteUnlessEnded notes a fault, unless the conversation is over.
func (s *Server) noteUnlessEnded(ctx context.Context, what string, err error) {
	if ctx.Err() == nil {
		s.note(what, err)
	}
}

// raw writes a value where the protocol takes any.
func raw(v any) protocol.LSPAny {
	b, err := protocol.Marshal(v)
	if err != nil {
		b, _ = json.Marshal(v)
	}
	return protocol.LSPAny(b)
}
