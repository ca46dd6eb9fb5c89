autocmd BufRead,BufNewFile *.quern setfiletype quern
