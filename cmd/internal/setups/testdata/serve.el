;;; -*- lexical-binding: t -*-
;; Tries the language server in a fresh folder, $FOLDER, and writes what went wrong to
;; $ERRORS.
(require 'ert)
(require 'eglot)
(require 'flymake)
(setq make-backup-files nil
      create-lockfiles nil
      eglot-sync-connect 20
      default-directory (file-name-as-directory (getenv "FOLDER")))
(prefer-coding-system 'utf-8)

(defun await (test)
  "Wait until TEST gives something, and give that."
  (let (it (end (time-add nil 20)))
    (while (and (not (setq it (funcall test))) (time-less-p nil end))
      (accept-process-output nil 0.02))
    it))

(defun errors-found ()
  "The places and texts of the errors in the buffer."
  ;; Eglot tells of edits once the user rests, which a script never does.
  (eglot--signal-textDocument/didChange)
  (flymake-start)
  (accept-process-output nil 0.1)
  (mapcar (lambda (d) (list (buffer-substring-no-properties (flymake-diagnostic-beg d) (flymake-diagnostic-end d))
                            (flymake-diagnostic-text d)))
          ;; What else is said of a rig is the linter's matter.
          (seq-filter (lambda (d) (eq 'eglot-error (flymake-diagnostic-type d))) (flymake-diagnostics))))

(defun visit (file text)
  (with-temp-file file (insert text))
  (switch-to-buffer (find-file-noselect file))
  ;; Eglot waits for the next command to connect, which a script never ends.
  (run-hooks 'post-command-hook)
  (should (await #'eglot-managed-p)))

(ert-deftest serves-rigs ()
  (visit "one.rig" "anchor  hüt\nload    sack\nhauler  team\npulley  top   on hüt  holds sack\nrope    long\n
reeve long: sack / hat \\ team  # 🪢\n")
  (let ((found (await #'errors-found)))
    (should (= 1 (length found)))
    (should (equal "hat" (caar found)))
    (should (string-match-p "hat is not a part of this rig" (cadar found))))
  (goto-char (point-min))
  (search-forward "/ hat")
  (delete-char -3)
  (insert "top")
  (should (await (lambda () (null (errors-found)))))
  (goto-char (point-min))
  (search-forward "anchor")
  (delete-char 1)
  (save-buffer)
  (should (string-prefix-p "anchor  hüt\n" (buffer-string)))
  (should (eq 1 (length (hash-table-values eglot--servers-by-project)))))

(ert-deftest serves-notes ()
  (skip-unless (fboundp 'markdown-mode))
  (visit "lesson.markdown" "# Lesson\n\n- The rope:\n\n  ```rig\n  anchor  head\n  load    sack\n  rope    long
  reeve long: sack / hed\n  ```\n")
  (let ((found (await #'errors-found)))
    (should (member "hed" (mapcar #'car found)))))

(let ((stats (ert-run-tests-batch t)))
  (ignore-errors (eglot-shutdown-all))
  (with-temp-file (getenv "ERRORS")
    (insert (format "%d of %d failed, %d skipped" (ert-stats-completed-unexpected stats)
                    (ert-stats-total stats) (ert-stats-skipped stats)))))
