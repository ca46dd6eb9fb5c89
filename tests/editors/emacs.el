;;; emacs.el --- Opens a recipe with the server, as a cook would, and writes what was seen -*- lexical-binding: t; coding: utf-8 -*-
;;; Code:
(package-initialize)
(require 'eglot)
(require 'flymake)
(require 'json)
(require 'quern-mode)
(setq quern-server-command (list (getenv "NODE") (getenv "SERVER") "--stdio")
      eglot-sync-connect 30
      eglot-confirm-server-initiated-edits nil
      eglot-autoshutdown t)

(defun quern-test-until (what)
  "Wait until WHAT gives something, for 20 s."
  (let ((end (+ (float-time) 20)) (seen nil))
    (while (and (not (setq seen (funcall what))) (< (float-time) end))
      (accept-process-output nil 0.05))
    seen))

(find-file (getenv "RECIPE"))
(let* ((mode (format "%s" major-mode))
       (found (quern-test-until
               (lambda ()
                 (unless (eglot-current-server)
                   (apply #'eglot (let ((current-prefix-arg nil)) (eglot--guess-contact))))
                 (flymake-start)
                 (mapcar #'flymake-diagnostic-text (flymake-diagnostics)))))
       (hover (progn
                (goto-char (point-min))
                (forward-line 1)
                (forward-char 3)
                (format "%s" (jsonrpc-request (eglot-current-server) :textDocument/hover (eglot--TextDocumentPositionParams)))))
       (scaled (progn
                 (jsonrpc-request (eglot-current-server) :workspace/executeCommand
                                  (list :command "quern.scale"
                                        :arguments (vector (list :uri (eglot--path-to-uri (buffer-file-name)) :to "2"))))
                 (quern-test-until (lambda () (string-match-p "1000 g" (buffer-string)))))))
  (with-temp-file (getenv "OUT")
    (insert (json-encode (list (cons 'mode mode) (cons 'found (vconcat found)) (cons 'hover hover)
                               (cons 'scaled (if scaled t :json-false)))))))
(kill-emacs 0)
;;; emacs.el ends here
