" Writes, a line for each of the text, which colour each run has: [["quernStep","do"],["", " Whisk"]].
set nocompatible encoding=utf-8
syntax on
let s:out = []
for s:file in argv()
  exe 'edit ' . fnameescape(s:file)
  set filetype=quern
  syntax sync fromstart
  for s:line in range(1, line('$'))
    let s:text = getline(s:line)
    let [s:col, s:runs] = [1, []]
    while s:col <= len(s:text)
      let s:name = synIDattr(synID(s:line, s:col, 1), 'name')
      if empty(s:runs) || s:name !=# s:runs[-1][0] | call add(s:runs, [s:name, '']) | endif
      let s:char = matchstr(s:text, '.', s:col - 1)
      let s:runs[-1][1] .= s:char
      let s:col += len(s:char)
    endwhile
    call add(s:out, json_encode(s:runs))
  endfor
endfor
call writefile(s:out, $OUT)
qa!
