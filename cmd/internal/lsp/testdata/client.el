;;; client.el --- plays Emacs with eglot  -*- lexical-binding: t -*-
;; Opens a file, edits it, formats it, and writes what came as JSON.
;; emacs --batch -l client.el, with PROGRAM, FILE, EDITS and RESULT in the environment.
(require 'package)
(package-initialize)
(require 'eglot)
(require 'json)

(define-derived-mode rig-mode prog-mode "Rig")
(add-to-list 'auto-mode-alist '("\\.rig\\'" . rig-mode))
(add-to-list 'eglot-server-programs (list 'rig-mode (getenv "PROGRAM") "serve"))
(setq eglot-sync-connect 60 eglot-autoshutdown nil eglot-confirm-server-initiated-edits nil)

(defvar published nil "The findings that came, the last first.")
(cl-defmethod eglot-handle-notification :before
  (_server (_method (eql textDocument/publishDiagnostics)) &key uri version diagnostics &allow-other-keys)
  (push (list :uri uri :version version :diagnostics diagnostics) published))

(defun wait-for (why is)
  "Wait until the function IS says so; WHY names it."
  (let ((end (+ (float-time) 60)))
    (while (not (funcall is))
      (when (> (float-time) end) (error "No %s" why))
      (accept-process-output nil 0.01))))

(defun place (position)
  "The buffer position of POSITION, as eglot finds it."
  (eglot--lsp-position-to-point position))

(defun everything () (buffer-substring-no-properties (point-min) (point-max)))

(let* ((coding-system-for-read 'utf-8-unix) (coding-system-for-write 'utf-8-unix)
       (json-object-type 'plist) (json-array-type 'vector) answers)
  (find-file (getenv "FILE"))
  (apply #'eglot (eglot--guess-contact))
  (wait-for "findings" (lambda () published))
  (setq answers (list :first (plist-get (car published) :diagnostics)))
  (seq-do (lambda (change)
            (let* ((range (plist-get change :range))
                   (from (place (plist-get range :start))) (to (place (plist-get range :end))))
              (goto-char from)
              (delete-region from to)
              (insert (plist-get change :text))))
          (json-read-file (getenv "EDITS")))
  (let ((before (length published))) ; eglot 1.9 wants no versions with them
    (eglot--signal-textDocument/didChange)
    (wait-for "findings after the edits" (lambda () (> (length published) before))))
  (setq answers (append answers (list :second (plist-get (car published) :diagnostics) :text (everything))))
  (goto-char (point-min))
  (re-search-forward "^pulley +runner +on ")
  (forward-char 1)
  (let ((server (eglot--current-server-or-lose)))
    (setq answers (append answers (list :hover (jsonrpc-request server :textDocument/hover (eglot--TextDocumentPositionParams))
                                        :definition (jsonrpc-request server :textDocument/definition (eglot--TextDocumentPositionParams))
                                        :encoding (plist-get (eglot--capabilities server) :positionEncoding)))))
  (eglot-rename "tractor")
  (setq answers (append answers (list :renamed (everything))))
  ;; The text as it was first has no errors and can be formatted.
  (erase-buffer)
  (insert-file-contents (getenv "FILE"))
  (eglot--signal-textDocument/didChange)
  (eglot-format-buffer)
  (setq answers (append answers (list :formatted (everything))))
  (set-buffer-modified-p nil)
  (eglot-shutdown (eglot--current-server-or-lose) nil 20)
  (with-temp-file (getenv "RESULT") (insert (json-serialize answers :null-object nil :false-object :json-false))))
