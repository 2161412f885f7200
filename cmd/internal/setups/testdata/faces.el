;;; -*- lexical-binding: t -*-
;; Reads from $TEXTS a list of {mode, text, places}, places being characters from 1, and
;; writes to $GROUPS for each text the faces there.
(require 'json)
(require 'rig-mode)
(when (require 'markdown-mode nil t)
  (setq markdown-fontify-code-blocks-natively t))
(setq rig-use-server nil)

(defun faces-of (one)
  (with-temp-buffer
    (insert (alist-get 'text one))
    (funcall (intern (alist-get 'mode one)))
    (font-lock-ensure)
    (vconcat
     (mapcar (lambda (place)
               (let ((face (get-text-property place 'face)))
                 (when (consp face)
                   (setq face (car face)))
                 (if face (symbol-name face) "")))
             (alist-get 'places one)))))

(let* ((coding-system-for-read 'utf-8)
       (coding-system-for-write 'utf-8)
       (texts (with-temp-buffer
                (insert-file-contents (getenv "TEXTS"))
                (json-parse-buffer :object-type 'alist :array-type 'list)))
       (all (vconcat (mapcar #'faces-of texts))))
  (with-temp-file (getenv "GROUPS")
    (insert (json-serialize all))))
