;;; rig-mode.el --- haul rigs in Fairlead's notation  -*- lexical-binding: t -*-

;; Version: 0.1
;; Package-Requires: ((emacs "27.1"))
;; Keywords: languages

;;; Commentary:

;; A major mode for rig files: colours, comments, indentation, the standard style on
;; save, findings by `M-x compile' and, through Eglot, the language server.
;; `rig-notes-mode' does the same for rig blocks in Markdown.

;;; Code:

(require 'compile)
(require 'seq)
(require 'subr-x)

(defgroup rig nil
  "Haul rigs in Fairlead's notation."
  :group 'languages)

(defcustom rig-program "fairlead"
  "The program that formats, lints and serves."
  :type 'string)

(defcustom rig-format-on-save t
  "Whether rigs are set in the standard style before they are saved."
  :type 'boolean)

(defcustom rig-use-server t
  "Whether a rig buffer starts the language server, where Eglot is installed."
  :type 'boolean)

;;;; The words of the notation. The tests of the project write these lists.

;; generated: statements
(defconst rig--statements
  '("rig" "use" "include" "join" "reeve" "expect" "accept"
    "units" "stock" "policy" "require" "rule"))
;; end
;; generated: kinds
(defconst rig--kinds
  '("anchor" "focal" "leg" "edge" "load" "counterweight" "hauler"
    "tender" "pulley" "carabiner" "ring" "device" "hitch" "clamp"
    "knot" "rope" "cord" "sling"))
;; end
;; generated: clauses
(defconst rig--clauses
  '("strength" "efficiency" "lowering" "friction" "turns" "from"
    "to" "angle" "strut" "padded" "mass" "weight" "slope"
    "people" "raise" "pull" "share" "sheaves" "cord" "wraps"
    "slips" "damages" "locking" "plain" "holds" "takes"
    "sideways" "set-back" "retains" "releasable" "diameter"
    "material" "at" "length"))
;; end
;; generated: naming
(defconst rig--naming
  '("from" "to" "holds"))
;; end
;; generated: free
(defconst rig--free
  '("material"))
;; end
;; generated: structure
(defconst rig--structure
  '("on" "at" "to" "from" "with" "without" "tail" "loop" "per"
    "because"))
;; end
;; generated: claims
(defconst rig--claims
  '("actual" "advantage" "by" "class" "drop" "factor" "finding"
    "for" "hand" "hauling" "held" "load" "lower" "not" "of"
    "over" "person" "pull" "released" "stroke" "times" "travel"
    "under" "when" "while"))
;; end
;; generated: classes
(defconst rig--classes
  '("simple" "compound" "complex"))
;; end
;; generated: figures
(defconst rig--figures
  '("factor" "pull" "lower" "hand" "people" "times" "advantage"
    "drop" "anchor" "angle" "turn" "cord" "set-back" "stroke"
    "resets" "stage" "gain"))
;; end
;; generated: settings
(defconst rig--settings
  '("error" "warning" "advice" "off"))
;; end
;; generated: units
(defconst rig--units
  '("kg" "g" "t" "lb" "lbf" "N" "kN" "daN" "m" "cm" "mm" "ft"
    "in" "deg" "%"))
;; end
;; generated: reserved
(defconst rig--reserved
  '("rig" "use" "include" "join" "reeve" "expect" "accept"
    "units" "stock" "policy" "require" "rule" "anchor" "focal"
    "leg" "edge" "load" "counterweight" "hauler" "tender"
    "pulley" "carabiner" "ring" "device" "hitch" "clamp" "knot"
    "rope" "cord" "sling" "strength" "efficiency" "lowering"
    "friction" "turns" "from" "to" "angle" "strut" "padded"
    "mass" "weight" "slope" "people" "raise" "pull" "share"
    "sheaves" "wraps" "slips" "damages" "locking" "plain" "holds"
    "takes" "sideways" "set-back" "retains" "releasable"
    "diameter" "material" "at" "length" "on" "with" "without"
    "tail" "loop" "per" "because"))
;; end

;;;; Colours

(defmacro rig--faces (&rest faces)
  "Define FACES, each (NAME INHERITED DESCRIPTION)."
  `(progn
     ,@(mapcar (lambda (face)
                 `(defface ,(nth 0 face) '((t :inherit ,(nth 1 face)))
                    ,(concat "Face for " (nth 2 face) ".")))
               faces)))

(rig--faces
 (rig-statement font-lock-keyword-face "the word that begins a statement")
 (rig-kind font-lock-type-face "kinds of part")
 (rig-clause font-lock-builtin-face "clauses")
 (rig-figure rig-clause "figures that house rules bound")
 (rig-structure font-lock-keyword-face "words such as on, to and per")
 (rig-claim font-lock-keyword-face "words of claims and house rules")
 (rig-choice font-lock-constant-face "one of a few words, such as simple or off")
 (rig-number font-lock-constant-face "numbers")
 (rig-unit font-lock-type-face "units")
 (rig-stroke bold "strokes of a reeving line")
 (rig-title font-lock-function-name-face "names of rigs and house rules")
 (rig-declared font-lock-variable-name-face "the name of a part where it is given")
 (rig-model font-lock-preprocessor-face "models")
 (rig-rule font-lock-function-name-face "rules")
 (rig-word font-lock-constant-face "knots and materials")
 (rig-strange font-lock-warning-face "what is no notation"))

(defconst rig--name "[[:alpha:]]\\(?:\\sw\\|\\s_\\)*")
(defconst rig--number "-?[0-9]+\\(?:\\.[0-9]+\\)?")
(defconst rig--quantity
  (concat "\\(" rig--number "\\)\\(?:[ \t]*\\(%\\|" (regexp-opt rig--units) "\\_>\\)\\)?"))

(defun rig--figure-follows-p ()
  "Whether a number follows point on its line."
  (looking-at-p (concat "[ \t]+" rig--number)))

(defun rig--free-p (word)
  "Whether WORD may be a name."
  (not (member word rig--reserved)))

(defun rig--sort (word statement nth before)
  "Say what WORD is, the NTH one of a line that begins with STATEMENT.
BEFORE is the word before it; point is behind WORD.  A name has no face."
  (cond
   ((= nth 0) (cond ((member word rig--kinds) 'rig-kind)
                    ((member word rig--statements) 'rig-statement)))
   ((member statement rig--kinds)
    (cond ((and (= nth 1) (rig--free-p word)) 'rig-declared)
          ((and (= nth 2) (rig--free-p word) (not (rig--figure-follows-p))) 'rig-model)
          (t (rig--phrase word before))))
   (t
    (pcase statement
      ((or "rig" "policy") (and (= nth 1) 'rig-title))
      ("stock" (pcase nth (1 'rig-kind) (2 'rig-model) (_ (rig--phrase word before))))
      ("include" (pcase nth
                   ((or 1 3) 'rig-title)
                   (2 'rig-structure)
                   (_ (rig--phrase word before))))
      ("join" (and (= nth 2) 'rig-structure))
      ("units" (and (member word rig--units) 'rig-unit))
      ("rule" (pcase nth (1 'rig-rule) (2 'rig-choice)))
      ("accept" (if (= nth 1) 'rig-rule (rig--in-claim word before)))
      ("expect" (rig--in-claim word before))
      ("require" (cond ((equal before "for") 'rig-kind)
                       ((member word rig--figures) 'rig-figure)
                       (t (rig--in-claim word before))))
      (_ (rig--phrase word before))))))

(defun rig--phrase (word before)
  "Say what WORD is among clauses, after the word BEFORE."
  (cond
   ((and (rig--free-p word)
         (member before (append '("on" "with" "without") rig--naming)))
    nil)
   ((member before rig--free) 'rig-word)
   ((member word rig--naming) (if (rig--figure-follows-p) 'rig-structure 'rig-clause))
   ((member word rig--clauses) 'rig-clause)
   ((member word rig--structure) 'rig-structure)))

(defun rig--in-claim (word before)
  "Say what WORD is in a claim, after the word BEFORE."
  (cond
   ((member before '("of" "by" "on" "at" "without")) nil)
   ((equal before "finding") 'rig-rule)
   ((equal before "class") 'rig-choice)
   ((member word rig--structure) 'rig-structure)
   ((member word rig--claims) 'rig-claim)))

(defun rig--paint (start end face)
  "Give the text from START to END a FACE, if any."
  (when face
    (put-text-property start end 'face face)))

(defun rig--paint-line ()
  "Colour the rest of the line, point being at its first visible character."
  (let ((end (line-end-position)) (nth 0) (depth 0) statement before)
    (while (progn (skip-chars-forward " \t" end) (< (point) end))
      (let ((start (point)))
        (cond
         ((or (eq (char-after) ?#) (nth 3 (syntax-ppss start)))
          (goto-char end))
         ((eq (char-after) ?\")
          (unless (re-search-forward "\\=\"\\(?:[^\"\\\n]\\|\\\\.\\)*\"" end t)
            (rig--paint start end 'rig-strange)
            (goto-char end)))
         ((looking-at rig--quantity)
          (rig--paint start (match-end 1) 'rig-number)
          (when (match-beginning 2)
            (rig--paint (match-beginning 2) (match-end 2) 'rig-unit))
          (goto-char (match-end 0))
          (setq before nil))
         ((looking-at rig--name)
          (goto-char (match-end 0))
          (let* ((word (match-string-no-properties 0))
                 (face (if (and (> depth 0) (not (equal before "holds")))
                           (or (rig--phrase word before) 'rig-word)
                         (rig--sort word statement nth before))))
            (unless statement
              (setq statement word))
            (rig--paint start (point) face)
            ;; A name is no word of the notation, whatever it looks like.
            (setq before (and face word)
                  nth (1+ nth))))
         (t
          (pcase (char-after)
            ((or ?/ ?\\ ?~) (rig--paint start (1+ start) 'rig-stroke))
            (?% (rig--paint start (1+ start) 'rig-unit))
            (?\( (setq depth (1+ depth)))
            (?\) (setq depth (1- depth)))
            ((or ?: ?,))
            (_ (rig--paint start (1+ start) 'rig-strange)))
          (setq before nil statement (or statement ""))
          (forward-char)))))))

(defun rig--paint-region (limit)
  "Colour the lines from point to LIMIT; a matcher of font lock that finds nothing."
  (beginning-of-line)
  (while (< (point) limit)
    (rig--paint-line)
    (forward-line))
  nil)

(defvar rig-mode-syntax-table
  (let ((table (make-syntax-table)))
    (modify-syntax-entry ?# "<" table)
    (modify-syntax-entry ?\n ">" table)
    (modify-syntax-entry ?\" "\"" table)
    (modify-syntax-entry ?\\ "\\" table)
    (dolist (sign '(?- ?_ ?.))
      (modify-syntax-entry sign "_" table))
    (dolist (sign '(?/ ?~ ?: ?, ?% ?' ?+ ?* ?= ?& ?| ?< ?> ?$))
      (modify-syntax-entry sign "." table))
    table)
  "Syntax table of `rig-mode'.")

(defconst rig--propertize
  (syntax-propertize-rules
   ;; A quote that is not closed on its line opens nothing.
   ("\\(\"\\)\\(?:[^\"\\\n]\\|\\\\.\\)*$"
    (1 (unless (rig--within-p (match-beginning 1)) (string-to-syntax "."))))
   ;; A backslash quotes within a text only; elsewhere it is a stroke.
   ("\\\\" (0 (unless (nth 3 (save-excursion (syntax-ppss (match-beginning 0)))) (string-to-syntax ".")))))
  "What a character is where the syntax table does not tell.")

(defun rig--within-p (place)
  "Whether PLACE is within a text or a comment."
  (nth 8 (save-excursion (syntax-ppss place))))

;;;; Indentation

(defun rig-indent-line ()
  "Put a reeving line that goes on under its first node, all else to the margin."
  (interactive)
  (let ((column (save-excursion (beginning-of-line) (rig--column))))
    (if (<= (current-column) (current-indentation))
        (indent-line-to column)
      (save-excursion (indent-line-to column)))))

(defun rig--column ()
  "The column for the line at point."
  (cond
   ((looking-at-p "[ \t]*#") 0)
   ((not (rig--goes-on-p)) 0)
   ((catch 'head
      (while (rig--line-above)
        (when (looking-at "[ \t]*reeve[ \t]+[^ \t:]+[ \t]*:[ \t]*")
          (goto-char (match-end 0))
          (throw 'head (current-column))))))
   (t 0)))

(defun rig--goes-on-p ()
  "Whether the line at point goes on with the statement of the one above."
  (and (not (rig--begins-p))
       (or (looking-at-p "[ \t]*[/\\~]")
           (save-excursion
             (and (rig--line-above)
                  (looking-at-p "[^#\n]*[/\\~][ \t]*\\(?:#.*\\)?$"))))
       (save-excursion (rig--line-above))))

(defun rig--begins-p ()
  "Whether the line at point begins a statement."
  (and (looking-at (concat "[ \t]*\\(" rig--name "\\)"))
       (member (match-string-no-properties 1) (append rig--statements rig--kinds))))

(defun rig--line-above ()
  "Go to the line above that is not only a comment.
The value is nil where a blank line cuts it off."
  (let (there)
    (while (and (setq there (= 0 (forward-line -1)))
                (looking-at-p "[ \t]*#")))
    (and there (not (looking-at-p "[ \t]*$")))))

;;;; The standard style

(defun rig-format-buffer ()
  "Set the buffer in the standard style: a rig, or the rig blocks of Markdown.
A text with an error in it stays as it is."
  (interactive)
  (let ((name (file-name-nondirectory (or buffer-file-name "new.rig")))
        (coding-system-for-read 'utf-8)
        (coding-system-for-write 'utf-8)
        (buffer (current-buffer)))
    (with-temp-buffer
      (let ((formatted (current-buffer)))
        (with-current-buffer buffer
          (when (eq 0 (save-restriction
                        (widen)
                        (call-process-region nil nil rig-program nil (list formatted nil) nil
                                             "fmt" "--as" name "-")))
            (replace-buffer-contents formatted)))))))

(defun rig--format-on-save ()
  "Set the buffer in the standard style, if that is wanted and can be done."
  (when (and rig-format-on-save
             (executable-find rig-program)
             (or (derived-mode-p 'rig-mode) (rig-block-p)))
    (rig-format-buffer)))

(defun rig-block-p ()
  "Whether the buffer is Markdown with a rig block."
  (save-excursion
    (goto-char (point-min))
    (re-search-forward "^[ \t>]*\\(?:[-*+0-9.)]+[ \t]+\\)?\\(?:```+\\|~~~+\\)[ \t]*rig[ \t]*$" nil t)))

;;;; Findings

(defconst rig--finding
  '(rig "^\\(.+?\\):\\([0-9]+\\):\\([0-9]+\\): \\(?:error\\|\\(warning\\)\\|\\(advice\\)\\): "
        1 2 3 (4 . 5))
  "How \"lint --format brief\" writes a finding.")

(add-to-list 'compilation-error-regexp-alist-alist rig--finding)
(add-to-list 'compilation-error-regexp-alist 'rig)

(defun rig--compile-command ()
  "What `M-x compile' offers in this buffer."
  (when buffer-file-name
    (format "%s lint --format brief %s" rig-program
            (shell-quote-argument (file-name-nondirectory buffer-file-name)))))

(defvar eglot-server-programs)
(declare-function eglot-ensure "eglot")

(with-eval-after-load 'eglot
  (add-to-list 'eglot-server-programs
               (cons 'rig-mode (lambda (&rest _) (list rig-program "serve")))))

(defun rig--serve ()
  "Start the language server for this buffer, where that is possible."
  (when (and rig-use-server buffer-file-name (executable-find rig-program)
             (or (fboundp 'eglot-ensure) (require 'eglot nil t)))
    (eglot-ensure)))

;;;; The modes

;;;###autoload
(define-derived-mode rig-mode prog-mode "Rig"
  "Major mode for haul rigs in Fairlead's notation."
  (setq-local comment-start "# ")
  (setq-local comment-start-skip "#+[ \t]*")
  (setq-local indent-tabs-mode nil)
  (setq-local indent-line-function #'rig-indent-line)
  (setq-local electric-indent-chars (append '(?/ ?\\ ?~ ?#) electric-indent-chars))
  (setq-local syntax-propertize-function rig--propertize)
  (setq-local font-lock-defaults '(((rig--paint-region))))
  (setq-local compilation-error-screen-columns nil)
  (when-let ((command (rig--compile-command)))
    (setq-local compile-command command))
  (add-hook 'before-save-hook #'rig--format-on-save nil t)
  (rig--serve))

;;;###autoload
(define-minor-mode rig-notes-mode
  "Set rig blocks of Markdown in the standard style on save, and check them."
  :lighter " Rigs"
  (if (not rig-notes-mode)
      (remove-hook 'before-save-hook #'rig--format-on-save t)
    (add-hook 'before-save-hook #'rig--format-on-save nil t)
    (when (rig-block-p)
      (with-eval-after-load 'eglot
        (add-to-list 'eglot-server-programs
                     (cons major-mode (lambda (&rest _) (list rig-program "serve")))))
      (rig--serve))))

;;;###autoload
(add-to-list 'auto-mode-alist '("\\.rig\\'" . rig-mode))

(provide 'rig-mode)

;;; rig-mode.el ends here
