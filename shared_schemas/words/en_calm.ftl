## ready and calm: the parts Ready? and Calm, loaded with the visit and not with the first paint

ready-breathing-easy = Breathing easy?
ready-awake = Awake and responsive?
ready-no-pain = Free of pain?
ready-safe-to-handle = Safe to handle?
ready-yes = Yes
ready-no = No
ready-pain-then = Pain raises the pressure. Ease it first where you can. If you measure now, the record says so.
ready-safe-then = Try one of these, or do not measure today:
ready-safe-1 = A towel around it, the head covered.
ready-safe-2 = Leave it in its own basket, the lid off.
ready-safe-3 = A second person who knows how to hold it.
ready-safe-4 = More quiet time, less holding.
ready-all = yes to all four
ready-some = { $n } of 4 answered
ready-said-no = no to: { $what }
ready-short-breathing-easy = breathing easy
ready-short-awake = awake
ready-short-no-pain = free of pain
ready-short-safe-to-handle = safe to handle

ready-signs = Laboured breathing, collapse, a seizure, or cold painful hind limbs?
ready-signs-now = One of these now
help-first-title = Do not measure. Help first.
help-first-signs = Any of these now?
help-first-sign-1 = Laboured or open-mouth breathing
help-first-sign-2 = Collapse
help-first-sign-3 = A seizure going on
help-first-sign-4 = Cold, painful hind limbs
help-first-then = Help the animal and call a veterinarian now.
help-first-basis = Common practice. Local rules and your practice's own protocol come first.
help-first-same = Measure all the same
help-first-sedated = It is sedated on purpose
help-first-change = Change the answer
help-first-noted = Measured all the same. The answer stays in the record.

not-today = Not today
not-today-title = Why not today?
not-today-hint = A visit without a number is a result too, and is filed as one.
not-today-back = Back to the questions
not-today-note = A few words, may stay empty
not-today-note-long = Shorten the note to { $most } characters.
bite-rule = Bite or scratch: stop, wash the wound, then follow your practice's own rule.
act-ready = answer in Ready?
act-all-the-same = measured all the same
act-not-today = not today
act-quiet-start = quiet time started
act-quiet-stop = quiet time stopped
act-quiet-go-on = quiet time goes on

demeanour-sleepy-told = dozes, hardly looks up
demeanour-calm-told = lies or sits loosely, looks around
demeanour-tense-told = crouches, ears back, wide pupils, or freezes
demeanour-fighting-told = struggles, growls, hisses, bites
quiet-title = Quiet time
quiet-need = { $minutes } min in peace before the first reading.
quiet-start = Start quiet time
quiet-stop = Stop
quiet-left = { $left } left
quiet-times = Since { $from }, ready { $at }
quiet-over = Quiet time is over
quiet-over-times = Ready since { $at }, in peace for { $waited }
quiet-again = Start again
quiet-go-on = Let it go on
quiet-stopped = Stopped after { $waited }
quiet-any-time = You can go on at any time. What was really waited is written down.
quiet-typed = { $minutes } min were typed. They stand.
quiet-noted = { $minutes } min were waited before the first reading.

place-as-last = Place as last time: { $place }
calm-more = More
field-owner = Owner present
owner-yes = Yes
owner-no = No
field-circumstances = What happened in the last 30 minutes
circumstance-examined = Examined
circumstance-blood-taken = Blood taken
circumstance-injected = Injected
circumstance-travelled = Travelled
circumstance-exercised = Ran or played
circumstance-waited-near-dogs = Waited near dogs
circumstance-in-pain-or-ill = In pain or ill
circumstance-none = None of these
field-drugs = Drugs on board
drugs-hint = Groups that move the pressure. No doses. Calming drugs stand with the state.
drugs-add = Add a drug
drugs-group = Group of the drug to add
drugs-close = Close the list
drugs-hours = { $group }: given
drugs-remove = Remove
drugs-remove-of = Remove { $group }
drugs-hours-none = time not known
drugs-hours-n = { $n ->
    [0] less than 1 hour ago
    [one] 1 hour ago
   *[other] { $n } hours ago
  }
drugs-days-n = { $n } days ago
drug-calcium-channel-blocker = Calcium channel blocker
drug-ace-inhibitor = ACE inhibitor
drug-angiotensin-receptor-blocker = Angiotensin receptor blocker
drug-beta-blocker = Beta blocker
drug-diuretic = Diuretic
drug-steroid = Steroid
drug-thyroid = For the thyroid
drug-sympathomimetic = Sympathomimetic
drug-other = Another group
drug-not-known = Not known
field-treatment = Treatment of the blood pressure
treatment-none = None
treatment-started = Started
treatment-changed = Changed
treatment-unchanged = Unchanged
age-from-birth = Age: { $n } { $unit ->
    [months] months
   *[years] years
  }, from its birth on its page.
summary-quiet-since = quiet since { $from }
summary-owner-yes = owner present
summary-owner-no = owner not present
summary-nothing-happened = nothing in 30 min
summary-drugs = { $n ->
    [one] 1 drug
   *[other] { $n } drugs
  }
summary-treatment = treatment { $word }
summary-rhythm = rhythm { $word }
summary-age = { $n } { $unit ->
    [months] months
   *[years] years
  } old
line-circumstances = Last 30 min
line-treatment = Treatment
line-rest = Minutes of quiet
summary-more-none = place, last 30 min, drugs, rhythm, age
