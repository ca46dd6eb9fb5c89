" Recipes kept as text.
if exists("b:did_ftplugin") | finish | endif
let b:did_ftplugin = 1
setlocal commentstring=#\ %s comments=:# formatoptions-=t formatoptions+=croql expandtab shiftwidth=2 softtabstop=2
let b:undo_ftplugin = "setlocal commentstring< comments< formatoptions< expandtab< shiftwidth< softtabstop<"
