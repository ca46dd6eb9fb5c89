;;; quern-mode.el --- Recipes kept as text -*- lexical-binding: t; coding: utf-8 -*-

;; Version: 0.1.0
;; Package-Requires: ((emacs "27.1"))
;; Keywords: languages

;;; Commentary:

;; Colours for `.quern' files, and the language server for Eglot.  Put this file and `quern-words.el' on the load path and
;; say (require 'quern-mode).  `quern-server-command' is what starts the server.

;;; Code:

(require 'quern-words)

(defgroup quern nil
  "Recipes kept as text."
  :group 'languages)

(defcustom quern-server-command '("quern" "lsp" "--stdio")
  "What starts the language server."
  :type '(repeat string))

(defconst quern-mode--one
  (concat "\\(?:[0-9]+ [0-9]+/[0-9]+\\|[0-9]+-[0-9]+/[0-9]+\\|[0-9]+/[0-9]+\\|[0-9]+\\(?:\\.[0-9]+\\)?[" quern-words-fractions
          "]?\\|[" quern-words-fractions "]\\|\\.[0-9]+\\)")
  "One number.")

(defconst quern-mode--number
  (concat quern-mode--one "\\(?:\\s-*[-–—]\\s-*" quern-mode--one "\\|-?\\s-+\\(?:to\\|or\\)\\s-+" quern-mode--one "\\)?")
  "A number or a range.")

(defconst quern-mode--units
  (concat "\\(?:" (regexp-opt quern-words-units) "\\|°\\s-?[CF]?\\|[CF]\\)")
  "What stands behind a number.")

(defun quern-mode--opens (words)
  "A pattern for a line that one of WORDS opens."
  (concat "^\\s-*\\(" (regexp-opt words) "\\)\\(?:\\s-\\|$\\)"))

(defconst quern-mode-keywords
  `((,(concat "^\\s-*\\(" (regexp-opt quern-words-headers) "\\)\\(?:\\s-+\\(.*?\\)\\)?\\(?:\\s-+\\(as\\|from\\)\\s-+\\(.*?\\)\\)?\\(?:\\s-+#.*\\|\\s-*\\)$")
     (1 'font-lock-keyword-face) (2 'font-lock-function-name-face nil t) (3 'font-lock-preprocessor-face nil t)
     (4 'font-lock-type-face nil t))
    ("^\\s-*\\(trial\\)\\(?:\\s-+\\([0-9]\\{4\\}-[0-9][0-9]-[0-9][0-9]\\)\\)?\\(?:\\s-+\\(by\\)\\>\\)?"
     (1 'font-lock-keyword-face) (2 'font-lock-constant-face nil t) (3 'font-lock-preprocessor-face nil t))
    ("^\\s-*\\(allow\\)\\(?:\\s-+\\([a-z][a-z-]*\\)\\)?\\(?:\\s-+\\(because\\)\\>\\)?"
     (1 'font-lock-keyword-face) (2 'font-lock-constant-face nil t) (3 'font-lock-preprocessor-face nil t))
    (,(quern-mode--opens quern-words-steps) 1 'font-lock-keyword-face)
    (,(concat "^\\s-*\\(" (regexp-opt quern-words-texts) "\\)\\s-+\\(.*?\\)\\(?:\\s-+#.*\\|\\s-*\\)$")
     (1 'font-lock-variable-name-face) (2 'font-lock-string-face))
    (,(quern-mode--opens quern-words-fields) 1 'font-lock-variable-name-face)
    (,(concat "^\\s-*\\(" (regexp-opt quern-words-shares) "\\)\\s-+[0-9" quern-words-fractions "]") 1 'font-lock-variable-name-face)
    (,(concat "^\\s-*\\(" (regexp-opt (append quern-words-said (mapcar #'capitalize quern-words-said))) "\\)\\(?:\\s-*:\\|\\s-+\\(?:about\\s-+\\)?[0-9]\\)")
     1 'font-lock-variable-name-face)
    (,(concat "\\_<\\(" (regexp-opt quern-words-free) "\\)\\_>") 1 'font-lock-type-face)
    (,(concat "^\\s-*pan\\s-.*?\\_<\\(" (regexp-opt quern-words-shapes) "\\)\\_>") 1 'font-lock-type-face)
    (,(concat "^\\s-*verdict\\s-+\\(" (regexp-opt quern-words-verdicts) "\\)\\_>") 1 'font-lock-type-face)
    ;; A number with what stands behind it, or alone; not the end of a word.
    (,(concat "\\(?:^\\|[^[:alnum:].]\\)\\(" quern-mode--number "\\)\\s-*-?\\s-*\\(" quern-mode--units "\\)\\(?:[^[:alnum:]]\\|$\\)")
     (1 'font-lock-constant-face) (2 'font-lock-builtin-face))
    (,(concat "\\(?:^\\|[^[:alnum:].]\\)\\(" quern-mode--number "\\)\\(?:[^[:alnum:]]\\|$\\)") 1 'font-lock-constant-face)
    (,(concat "^\\s-*\\(an?\\|" (regexp-opt quern-words-numbers) "\\)\\s-+\\(" (regexp-opt quern-words-units) "\\)\\_>")
     (1 'font-lock-constant-face) (2 'font-lock-builtin-face))
    ("\\[[^]\n]+\\]" 0 'font-lock-variable-name-face))
  "Colours of a line.")

(defun quern-mode--comments (limit)
  "Find a comment before LIMIT: a mark at the start of a line or behind a blank."
  (re-search-forward "\\(?:^\\|\\s-\\)\\(#.*\\)$" limit t))

;;;###autoload
(define-derived-mode quern-mode text-mode "Quern"
  "Recipes kept as text, worked out in grams and checked."
  (setq-local comment-start "# ")
  (setq-local comment-start-skip "#+\\s-*")
  (setq-local imenu-generic-expression '((nil "^\\s-*\\(?:recipe\\|part\\|trial\\)\\s-+\\(.*\\)$" 1)))
  (setq-local font-lock-defaults
              `((,@quern-mode-keywords (quern-mode--comments 1 'font-lock-comment-face t)) t nil nil)))

;;;###autoload
(add-to-list 'auto-mode-alist '("\\.quern\\'" . quern-mode))

(with-eval-after-load 'eglot
  (defvar eglot-server-programs)
  (add-to-list 'eglot-server-programs (cons 'quern-mode (lambda (&rest _) quern-server-command))))

(provide 'quern-mode)
;;; quern-mode.el ends here
