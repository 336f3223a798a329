### Every sentence shown, in English. Numbers are formatted before they reach a sentence.

## why: what is wrong with a field (wire checks, command line)

## screens: labels, hints, buttons

## rules: verdicts, cautions, categories, how this was worked out

## sync: saved, sending, in the record, needs you

## errors: what went wrong and what to do
