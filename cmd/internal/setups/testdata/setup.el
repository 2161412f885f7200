;;; -*- lexical-binding: t -*-
;; Tries the set-up in a fresh folder, $FOLDER, and writes what went wrong to $ERRORS.
(require 'ert)
(require 'rig-mode)
(require 'markdown-mode nil t)
(setq rig-use-server nil
      make-backup-files nil
      create-lockfiles nil
      default-directory (file-name-as-directory (getenv "FOLDER")))
(prefer-coding-system 'utf-8)

(defun file-text (file)
  (with-temp-buffer (insert-file-contents file) (buffer-string)))

(defmacro visiting (file text &rest body)
  "With FILE made of TEXT and visited, run BODY."
  (declare (indent 2))
  `(progn
     (with-temp-file ,file (insert ,text))
     (let ((buffer (find-file-noselect ,file)))
       (unwind-protect
           (with-current-buffer buffer ,@body)
         (with-current-buffer buffer (set-buffer-modified-p nil))
         (kill-buffer buffer)))))

(ert-deftest knows-the-files ()
  (visiting "new.rig" "anchor head\n"
    (should (eq major-mode 'rig-mode))
    (should (equal (format "%s lint --format brief new.rig" rig-program) compile-command))
    (goto-char (point-min))
    (comment-line 1)
    (should (equal "# anchor head\n" (buffer-string)))
    (should-not indent-tabs-mode)))

(ert-deftest indents ()
  (let ((want "anchor head
# head
reeve long: litter / grab
            / top \\ runner /
# and
            team
reeve t: a /
anchor b

/ c
reeve  second :  x
                 / y  # \\
rope m
"))
    (visiting "indents.rig" (replace-regexp-in-string "^ +" "" want)
      (indent-region (point-min) (point-max))
      (should (equal want (buffer-string)))
      (goto-char (point-min))
      (while (re-search-forward "^" nil t)
        (indent-line-to 7)
        (forward-line))
      (indent-region (point-min) (point-max))
      (should (equal (replace-regexp-in-string " +$" "" (buffer-string)) want)))))

(ert-deftest tells-texts-from-strokes ()
  (visiting "texts.rig" "reeve a: b \\ c # \"x\nrig d \"e \\\" # f\" # g\nrig h \"i # j\nanchor k # l\n"
    (dolist (one '(("c" nil nil) ("x" nil t) ("e" t nil) ("f" t nil) ("g" nil t) ("i" nil nil) ("j" nil t) ("k" nil nil) ("l" nil t)))
      (goto-char (point-min))
      (re-search-forward (concat "\\_<" (car one) "\\_>"))
      (let ((state (syntax-ppss)))
        (should (equal (cdr one) (list (and (nth 3 state) t) (and (nth 4 state) t))))))))

(defconst crooked "# Ünten 🪢
anchor   head
load  sack
hauler team
rope long
pulley top on head holds sack
reeve long: sack / top \\ team

")
(defconst straight "# Ünten 🪢
anchor  head
load    sack
hauler  team
rope    long
pulley  top   on head  holds sack
reeve long: sack / top \\ team
")

(ert-deftest formats-on-save ()
  (visiting "crooked rig.rig" crooked
    (search-forward "holds")
    (set-buffer-modified-p t)
    (save-buffer)
    (should (equal straight (file-text buffer-file-name)))
    (should (looking-back "holds" (line-beginning-position)))
    (goto-char (point-min))
    (search-forward "anchor")
    (delete-char -2)
    (save-buffer)
    (should (string-prefix-p "# Ünten 🪢\nanch  head\n" (file-text buffer-file-name)))
    (insert "or  ")
    (let ((rig-format-on-save nil))
      (save-buffer))
    (should (string-search "\nanchor    head\n" (file-text buffer-file-name)))
    (rig-format-buffer)
    (should (equal straight (buffer-string)))))

(ert-deftest formats-notes ()
  (skip-unless (fboundp 'markdown-mode))
  (let ((rest "*   Text   as it is  \n\n- ```rig\n  anchor   head\n  ```\n"))
    (visiting "notes.markdown" rest
      (rig-notes-mode)
      (set-buffer-modified-p t)
      (save-buffer)
      (should (equal (string-replace "anchor   head" "anchor  head" rest) (file-text buffer-file-name)))))
  (visiting "plain.markdown" "```rigs\nanchor   head\n```\n"
    (rig-notes-mode)
    (set-buffer-modified-p t)
    (save-buffer)
    (should (equal "```rigs\nanchor   head\n```\n" (file-text buffer-file-name)))))

(ert-deftest lists-findings ()
  (visiting "made of two.rig" "anchor  hüt\nload    ö  mass 3 kg\nhauler  team\nrope    long\n\nreeve long: ö / hat\n"
    (let* ((output (compile compile-command)) (left 200))
      (while (and (get-buffer-process output) (> (setq left (1- left)) 0))
        (accept-process-output nil 0.05))
      (with-current-buffer output
        (goto-char (point-min))
        (search-forward " error: ")
        (beginning-of-line)
        (let* ((message (get-text-property (point) 'compilation-message))
               (loc (compilation--message->loc message)))
          (should (= 2 (compilation--message->type message)))
          (should (equal "made of two.rig" (caar (compilation--loc->file-struct loc))))
          (should (= 6 (compilation--loc->line loc)))
          (should (= 17 (compilation--loc->col loc))))))))

(let ((stats (ert-run-tests-batch t)))
  (with-temp-file (getenv "ERRORS")
    (insert (format "%d of %d failed, %d skipped" (ert-stats-completed-unexpected stats)
                    (ert-stats-total stats) (ert-stats-skipped stats)))))
