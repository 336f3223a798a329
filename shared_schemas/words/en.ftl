### Every sentence shown, in English. Numbers are formatted before they reach a sentence.

## why: what is wrong with a field (wire checks, command line)

# One line for a person: where, then what is wrong there. $path is a JSON Pointer, $reason one of the sentences below.
why-line = { $path }: { $reason }
why-whole-document = the whole document

why-not-an-object = this must be an object with named fields.
why-not-a-list = this must be a list.
why-not-text = this must be text.
why-not-a-whole-number = this must be a whole number, without quotes and without a fraction.
why-not-true-or-false = this must be true or false.
why-unknown-key = no field of this name is known here. Was it mistyped?
why-missing = this is needed and was left out.
why-too-few-items = there are too few entries in this list.
why-too-many-items = there are too many entries in this list.
why-too-short = this text is too short.
why-too-long = this text is too long.
why-wrong-form = this is not written in the form that is needed here.
why-not-in-list = this word is not one of those that can stand here.
why-below-minimum = this number is below what can be entered here.
why-above-maximum = this number is above what can be entered here.
why-id-twice = an earlier reading of this measurement has the same id. Each needs its own.
why-numbers-and-beyond = this reading has numbers and also says that there was no number. Only one of the two can be true.
why-neither-numbers-nor-beyond = this reading has no systolic pressure, and does not say why there is none.

why-unreadable-not-utf8 = this cannot be read: the text is not in UTF-8.
why-unreadable-not-json = this cannot be read: it is not one JSON document.
why-unreadable-key-twice = this cannot be read: a field stands twice in the same object.
why-unreadable-not-finite = this cannot be read: a number in it is endless, no number at all, or far too long.
why-unreadable-too-deep = this cannot be read: it is nested more than 16 levels deep.
why-unreadable-lone-surrogate = this cannot be read: a text in it holds half of a character.
why-engine = the phone's engine could not work this out.

why-no-engine = The phone's engine is not built. Build the client first (python3 -m demo --prepare does it), then try again.
why-no-node = The phone's engine needs Node, and there is none on this machine. Install Node, or leave out --engine phone.
why-engine-stopped = The phone's engine stopped without an answer.

## screens: labels, hints, buttons

app-name = quietcuff
page-title = { $page } · quietcuff
page-title-error = Error: { $page } · quietcuff
skip-to-content = To the content
look-change = Look: { $look }
look-day = day
look-dim = dim
look-outdoor = sun
hand-change = Keys for the thumb of this hand: { $hand }
hand-right = right hand
hand-left = left hand
unsent-count = { $n ->
    [0] 0 not sent
    [one] 1 not sent
   *[other] { $n } not sent
  }
outbox-link = Outbox, { $n ->
    [0] 0 not sent
    [one] 1 not sent
   *[other] { $n } not sent
  }
back-to-patients = Round
update-ready = A newer quietcuff is ready.
update-take = Use it now
not-a-page = There is nothing at this address.

first-cautions-title = Before you rely on it
first-cautions-seen = I have read this
care-support = quietcuff supports licensed people. It shows its basis so that you can check it.
care-no-diagnosis = It never diagnoses and never doses. A veterinarian interprets and signs.
care-local-rules = Local rules and your practice's own protocol come first.
care-sedated = A sedated animal gets a number and no band.
care-emergency = An emergency is a reason to call, not to go on measuring.
care-comfort = The animal's comfort comes before a complete series. Bites and scratches: stop, and follow your practice's own rule.
care-own-figures = Figures of our own, and figures not re-read in their papers, say so.

sign-in-title = Sign in
sign-in-hint = Once, with a network. After that this phone works without one.
sign-in-login = Login
sign-in-password = Password
sign-in-show = Show password
sign-in-hide = Hide password
sign-in-button = Sign in
sign-in-working = Signing in
sign-out = Sign out
sign-out-unsent = { $n ->
    [one] 1 entry is not sent yet. It stays on this phone and is sent after the next sign in.
   *[other] { $n } entries are not sent yet. They stay on this phone and are sent after the next sign in.
  }
sign-out-really = Sign out all the same
signed-in-as = { $person }, { $practice }

problem-title = There is a problem

round-title = Round
bag-title = Bag
help-title = Help
training-title = Training
this-phone-title = This phone
patients-search = Find by name, mark or number
patients-none = No animals on this phone yet.
patients-none-found = No animal matches “{ $text }”.
patients-drafts = Not filed yet
patients-all = Animals
draft-name-none = No animal yet
draft-line = { $name }: { $n ->
    [0] no readings yet
    [one] 1 reading
   *[other] { $n } readings
  }
draft-continue = Continue { $name }
draft-begun = begun { $when }
measure = Measure
measure-unknown = Measure first, choose the animal later
measure-a-dog = A dog
measure-a-cat = A cat
species-dog = Dog
species-cat = Cat

add-animal = Add animal
add-animal-title = Add animal
add-animal-species = Species
add-animal-name = Name
add-animal-mark = Mark
add-animal-mark-hint = Kennel, chip or colour: what tells it from the next one. May stay empty.
add-animal-save = Save animal
cancel = Cancel
ask-species = Choose the species
ask-name = Enter the name, or the mark if it has none
ask-name-long = Name must be 80 characters or fewer
ask-mark-long = Mark must be 120 characters or fewer

patient-visits = Visits
patient-no-visits = Not measured yet.
patient-visit-result = { $phrase }, mean { $mean } mmHg
patient-visit-orientation = { $phrase }; { $mean } mmHg for orientation only
patient-visit-bounded = { $bound } { $phrase }.
patient-not-known = This animal is not on this phone.
differs-title = The server worked this out differently
differs-phone = This phone: { $phrase }
differs-server = Server: { $phrase }
differs-stands = Both are kept. The server's result stands.

outbox-title = Outbox
outbox-empty = Nothing was filed on this phone yet.
outbox-measurement = { $name }, measured
outbox-patient = { $name }, added
outbox-other = An entry
outbox-open = Show the animal
outbox-unreadable = An entry this phone cannot open

measure-title = Measure
measure-of = Measure { $name }
part-ready = Ready?
part-calm = Calm
part-cuff = Cuff
part-readings = Readings
part-result = Result
part-show = Show { $part }
ready-next = Next: calm
calm-next = Next: cuff
cuff-next = Next: readings
draft-missing = This measurement is not on this phone any more.
draft-drop = Delete this draft
draft-drop-ask = { $n ->
    [0] Delete this draft of { $name } from this phone?
    [one] Delete 1 reading of { $name } from this phone?
   *[other] Delete { $n } readings of { $name } from this phone?
  }
draft-drop-yes = Delete it
draft-drop-no = Keep it

field-species = Species
field-age = Age
field-age-unit = Age counted in
age-years = Years
age-months = Months
age-not-known = Not known
field-state = State
state-awake = Awake
state-calmed = Calmed by a drug
state-sedated = Sedated
field-drug-group = Group of the drug
drug-group-gabapentinoid = Gabapentinoid
drug-group-serotonergic = Serotonergic
drug-group-benzodiazepine = Benzodiazepine
drug-group-opioid = Opioid
drug-group-alpha2-agonist = Alpha-2 agonist
drug-group-phenothiazine = Phenothiazine
drug-group-other = Another
drug-group-not-known = Not known
field-hours = Given how many hours ago
field-demeanour = Demeanour
demeanour-sleepy = Sleepy
demeanour-calm = Calm
demeanour-tense = Tense
demeanour-fighting = Fighting
field-rest = Quiet time before the first reading, in minutes
field-place = Place
place-home = Home
place-clinic = Clinic
place-shelter = Shelter
place-partner = Partner clinic
place-other = Elsewhere
field-rhythm = Rhythm
rhythm-regular = Regular
rhythm-irregular = Irregular
summary-rest = quiet { $minutes } min

field-method = Method
method-doppler = Doppler
method-oscillometric = Oscillometric
field-gauge = Gauge
gauge-aneroid = Aneroid
gauge-digital = Digital
field-circumference = Limb circumference
circumference-hint = In cm, or in mm with the unit: 13, 13.5 or 130 mm
echo-mm = = { $n } mm
echo-minutes = = { $n } min
echo-hours = = { $n } h
echo-months = = { $n } months
echo-bag = = { $widths } mm
field-bag = Cuff widths in the bag, in mm
bag-hint = Like 20, 25, 30. Kept on this phone.
choice-no-fit = No cuff in the bag fits this limb. The target is { $target } mm.
choice-line = { $mm } mm: { $fit }, { $share } of the limb. The target is { $target } mm.
choice-ask = Enter the limb circumference to see which cuff fits.
field-width = Cuff used, width in mm
width-other = Other
field-width-other = Width used, in mm
used-line = { $mm } mm is { $share } of the limb: { $fit }.
used-cuff = { $mm } mm cuff
used-cuff-none = cuff not noted
field-site = Site
site-forearm = Forearm
site-above-elbow = Above the elbow
site-above-hock = Above the hock
site-metatarsus = Metatarsus
site-tail-base = Tail base
field-side = Side
side-left = Left
side-right = Right
side-left-letter = L
side-right-letter = R
field-posture = Posture
posture-lateral = On its side
posture-sternal = On its chest
posture-sitting = Sitting
posture-standing = Standing
posture-in-lap = In the lap
field-restraint = How it is held
restraint-none = Not at all
restraint-held = Held
restraint-lap = In the lap
restraint-towel = In a towel
restraint-basket = In its basket
restraint-muzzle = Muzzle
field-instrument = Machine or probe
instrument-hint = What tells it from the others, so that visits compare. May stay empty.
ask-instrument-long = { $field } must be { $most } characters or fewer
as-last-time = As last time: { $what }
as-last-time-act = placing of the cuff
field-height = Cuff against the heart
height-level = Level
height-above = Above
height-below = Below
field-height-by = By how much
height-5 = 5 cm
height-10 = 10 cm
height-other = Other
field-height-other = Distance from the heart, in cm

ask-number = { $field } must be a number, like { $example }
ask-range = { $field } must be between { $least } and { $most }
ask-ambiguous = { $field } can be read in two ways. Write it without a separator, or with the unit
ask-unit = { $field } must be in { $units }
ask-systolic = Enter the systolic pressure
ask-whole = { $field } must be a whole number, like { $example }
ask-bag = { $field } must be whole numbers, like 20, 25, 30. Not read: { $piece }
file-problems = Mend what could not be read, or file without it.
file-without = File without it

pad-systolic = Systolic
pad-mean = Mean
pad-diastolic = Diastolic
pad-pulse = Pulse
pad-delete = Delete digit
pad-undo = Undo
pad-skip = Skip
pad-next = Next number
pad-above-gauge = Above gauge
pad-no-sound = No sound
pad-no-value = No value
pad-add = Add
pad-keys = Number pad
set-aside = Set aside
put-back = Put back
new-set = New set
finish = Finish
file = File
readings-all = { $n ->
    [0] No readings
    [one] 1 reading
   *[other] All { $n } readings
  }
readings-keys = Back to the keys
reading-latest = No. { $n }: { $standing }
readings-count = { $n ->
    [0] No readings
    [one] 1 reading
   *[other] { $n } readings
  }
reading-in-list = Reading { $n }: { $value }, { $standing }
reading-pick = Choose a reading to set it aside or put it back.
set-number = Set { $n }
row-title = Row of readings: { $values }
row-legend = Filled counts, hollow does not.
row-legend-mean = Filled counts, hollow does not. Thick line: the mean.
row-legend-interval = Filled counts, hollow does not. Thick line: the mean; broken lines: where it would stay if you went on now.
row-legend-above = Triangle: above the gauge.
row-legend-gap = Dash: no number.
set-aside-title = Why set aside { $value }?
beyond-above-gauge = Above gauge
beyond-no-sound = No sound
beyond-no-value = No value
second-tap = { $value } was added once. A second tap came at once and was ignored.
second-tap-add = Add it again
second-tap-no = Once is right
unlikely-outside = { $field } { $value } is outside what is usual, { $least } to { $most }.
impossible-outside = { $field } { $value } is outside what is possible, { $least } to { $most }. It is kept and does not count.
impossible-order = { $numbers } Systolic must be above mean, and mean above diastolic. As it is, it is kept and does not count.
unlikely-keep = Keep
unlikely-fix = Fix
undone = Undone: { $act }
act-add = { $value } added
act-set-aside = { $value } set aside
act-put-back = { $value } put back
act-new-set = new set
act-finish = finished
act-choice = { $field } changed
undo-nothing = Nothing to undo
set-full = A set holds 40 readings. Begin a new set to go on.
sets-full = A measurement holds 6 sets. Finish this one.
new-set-title = Why a new set?
new-set-moved = Cuff moved or wrapped anew
new-set-changed = Another cuff
new-set-method = Another method: { $method }
back-to-readings = Back to the readings

file-needs-animal = Which animal was this?
file-choose-back = Back to the result
file-needs-animal-hint = A measurement is filed under an animal.
file-choose = Choose { $name }
file-who = File under { $name }
limb-out = The limb circumference was { $name }'s of { $day }: taken out. Measure the limb or leave it out.
file-other-species = Only animals of the same species are listed.
filed-to = Filed: { $name }

keeping = Keeping what you typed
kept-not = What you typed is not saved yet.
kept-retry = Try again
summary-limb = limb { $cm } cm
ask-login = Enter your login
ask-password = Enter your password
sign-in-wrong = Login and password do not belong together. Check both
sign-in-not-now = Signing in did not work just now. Try again in a moment.
not-loaded = This screen could not be fetched yet. Go back, and try again with a network.
not-opened = What is kept on this phone could not be opened. Load this window again; nothing was deleted.
file-another = Another animal

## ready and calm

quiet-strip-title = Quiet times
quiet-strip-more = and { $n } more
quiet-row-left = Quiet: { $left } left, ready { $at }
quiet-row-over = Quiet time is over, ready since { $at }
quiet-row-slim = quiet, ready since { $at }
quiet-row-real = Real, not training: { $name }
quiet-step = The phone's clock was set { $by ->
    [forward] forward by { $time } meanwhile. That is taken off.
   *[back] back by { $time } meanwhile.
  } Check with a watch.
quiet-before-start = The phone's clock stands before the start. Start again, or type the minutes.

## cuff and bag

# These stand in en_cuff.ftl: the first paint does not wait for them.

## readings and result

# More than the verdict: always said while readings are taken.
more-first = { $first ->
    [0] At least { $n } in all.
    [one] The first does not count, then at least { $n } more.
   *[other] The first { $first } do not count, then at least { $n } more.
  }
readings-all-short = { $n ->
    [0] No readings
    [one] 1 reading
   *[other] All { $n }
  }
more-none = No more needed.
more-until = At least 1 more.
more-second-look = Second look?
since-short = { $n } s since the last, { $advised } s advised
since-seconds = { $n } s since the last
since-minutes = { $n } min since the last
screen-may-sleep = The screen may sleep; times keep counting.
row-latest = The latest { $n } of { $all }
without-number-doppler = Three in a row without a number. Listen and feel: irregular, weak, shivering? A smaller limb? The probe on the pulse, enough gel?
without-number-oscillometric = Three in a row without a value. Feel the pulse: irregular, weak, shivering? A smaller limb? The hose free?
new-set-site = Another site
stop = Stop
second-look = Second look: { $minutes } min
second-look-left = Second look: { $time } left, then three more
second-look-over = Second look: time is over, three more now
act-second-look = second look
act-pulse = pulse { $bpm } noted
pad-tap-pulse = Tap pulse
pulse-title = Pulse by tapping
pulse-hint = Tap at each beat you feel or hear, { $beats } times.
pulse-tap = Tap at each beat
pulse-count = { $n } of { $beats }
pulse-anew-pause = More than { $seconds } s without a tap: counted anew.
pulse-anew-too-fast = Too fast to be a pulse: counted anew.
pulse-rate = { $bpm } a minute
pulse-arithmetic = { $n } intervals in { $seconds } s: { $n } × 60 ÷ { $seconds } = { $bpm }
pulse-intervals = Shortest interval { $shortest } s, longest { $longest } s. How did it feel?
pulse-kept-latest = Noted with the latest reading.
pulse-kept-next = Noted for the first reading.
pulse-felt = felt { $bpm }
pulse-even = Even
pulse-uneven = Uneven
pulse-uneven-then = With an irregular rhythm more readings are taken, and all of them are averaged.
pulse-mark-irregular = Mark the rhythm irregular
pulse-again = Tap again

urgent-highest = Look at eyes and behaviour now
urgent-highest-folded = Look at eyes and behaviour now. Anything wrong: call a veterinarian.
urgent-highest-signs = Sudden blindness, wide pupils that do not narrow in light, blood in the eye, a seizure, stupor, sudden wobbling?
urgent-highest-then = If any: call a veterinarian now, keep the animal quiet and in the dark, and do not repeat the readings to make them agree. If none: tell a veterinarian today.
urgent-low = Low pressure: look at the animal first
urgent-no-sound = No sound: look at the animal first
urgent-low-folded = Low pressure: look at the animal first. Weak or cold: call a veterinarian.
urgent-no-sound-folded = No sound: look at the animal first. Weak or cold: call a veterinarian.
urgent-low-signs = Collapsed, cold, pale, very dull or weak? Help the animal first and call a veterinarian now. Check the cuff on the way.
urgent-low-else = If it is bright: put the cuff on anew, level with the heart, and measure again. If it stays low, tell a veterinarian today.
urgent-no-sound-else = If it is bright: look for the pulse anew, and check probe and cuff.
urgent-local = Local rules and your practice's own protocol come first.

result-stopped = { $n ->
    [0] Stopped: { $why }. That is a result, and it is filed as one.
    [one] Stopped: { $why }. The 1 reading taken is filed as it is. That is a result.
   *[other] Stopped: { $why }. The { $n } readings taken are filed as they are. That is a result.
  }
result-not-today = Not measured today: { $why }. That is a result, and it is filed as one.
stop-title = Why stop?
stop-kept = What was measured is kept. A result without a full series is respected.
stop-went-on = Go on measuring
act-stop = stopped
act-go-on = went on
why-stopped-breathing = Breathing is not easy
why-stopped-not-responsive = Not awake or not responsive
why-stopped-in-pain = In pain
why-stopped-not-safe = Not safe to handle
why-stopped-too-distressed = Too distressed
why-stopped-bite-or-scratch = Bite or scratch
why-stopped-owner-refused = The owner said no
why-stopped-no-cuff = No cuff fits
why-stopped-equipment = The equipment failed
why-stopped-other = Another reason
aside-title = Set aside
aside-line = { $value }: { $reason }
aside-line-of-set = Set { $n }, { $value }: { $reason }
aside-put-back = With all of these put back (this is not the result): { $mean } { $phrase }

## patient and round

ways-title = Other screens
round-quiet = Quiet time
round-quiet-for = Start quiet time for { $name }
animal-last = last { $when }
draft-new = { $name }: a new animal, not saved yet
draft-change = { $name }: a change, not saved yet

age-months-about = { $n ->
    [one] about 1 month
   *[other] about { $n } months
  }
age-years-about = about { $n } years
sex-female = Female
sex-male = Male
sex-female-neutered = Female, neutered
sex-male-neutered = Male, neutered
sex-not-known = Sex not known
side-both = Both sides

glance-title = Before you touch
glance-sites = No cuff here:
handling-title = Handling
handling-0 = Easy to handle
handling-1 = Needs patience
handling-2 = Needs a second person
handling-3 = Bites or scratches
handling-worked = What worked: { $trick }
handling-ask = How it takes handling
handling-trick = What worked
handling-trick-hint = Like: towel over the head. May stay empty.
handling-save = Save handling
ask-handling = Choose how it takes handling
ask-trick-long = What worked must be 120 characters or fewer
bruises-said = Bruises or bleeds easily: few inflations, and look at the skin after.
bruises-ask = Bruises or bleeds easily
bruises-no = No
bruises-yes = Yes
change-kept = Saved on this phone.
meanwhile-changed = Somebody changed this animal since you began.
meanwhile-taken = Taken over from there, since you changed nothing in it: { $fields }.
meanwhile-both = { $field }. Here: { $here }. Saved meanwhile: { $there }.
meanwhile-differs = Not all here is as it was saved.
meanwhile-both-unknown = { $field }. Here: { $here }. Saved: { $there }.
meanwhile-keep = Keep { $text }
meanwhile-take = Take { $text }
meanwhile-nothing = nothing
ask-meanwhile = { $field }: choose which of the two stands

measured-last = Measured last
measured-last-line = { $how } · { $when }
measured-last-noted = The cuff was last noted on { $when }: { $how }

sites-title = Sites not to be used
sites-none = All sites may be used.
sites-past = { $n ->
    [one] 1 that is over
   *[other] { $n } that are over
  }
sites-full = There is no room for another site. Take one away first
site-add = Add a site
site-tap = No cuff here: { $place }
site-for-good = { $place } · { $why } · for good
site-open = { $place } · { $why } · until taken away
site-until = { $place } · { $why } · until { $day }
site-past = { $place } · { $why } · was until { $day }
site-end = May be used again
site-mistake = Not missing: a mistake
site-end-of = { $place }: { $act }
site-why = Why no cuff there
site-why-wound = Wound
site-why-skin = Skin
site-why-swelling = Swelling
site-why-fracture = Fracture
site-why-catheter = Catheter
site-why-punctured = Punctured
site-why-lump = Lump
site-why-clot = Clot
site-why-bandage = Bandage
site-why-painful = Painful
site-why-missing = Missing
site-why-other = Another reason
site-end-ask = Until when
site-end-open = Until taken away
site-end-days = { $n } days
site-end-other = Other
site-end-days-typed = In how many days
site-end-day = The last day is { $day }.
site-save = Save site
ask-site = Choose the site
ask-side = Choose the side
ask-site-why = Choose why no cuff may go there
ask-days = In how many days must be a whole number, 1 to { $most }

who-title = Who it is
who-change = Change or add
who-save = Save changes
identifiers-title = Identifiers
identifier-add = Add an identifier
identifier-kind = Kind of identifier { $n }
identifier-text = Identifier { $n }
identifier-hint = Left empty, it is taken away.
identifier-line = { $kind }: { $text }
identifier-chip = Microchip
identifier-tattoo = Tattoo
identifier-kennel = Kennel
identifier-tag = Tag
identifier-record-number = Record number
identifier-other = Other
chip-length = A microchip of ISO 11784 has 15 digits. Read it again; it can be saved as it is.
chip-range = No microchip of ISO 11784 can hold this number. Read it again; it can be saved as it is.
chip-test = A number from 999 is for tests. Read it again; it can be saved as it is.
birth-ask = What is known of its age
birth-born = Born
birth-years = Age in years
birth-months = Age in months
birth-hint = Year, or month and year: 2019 or 3/2019
field-sex = Sex
field-breed = Breed
field-reason = Why this change
field-reason-hint = Others may know the animal by what stood there before.
ask-identifier-long = An identifier must be 60 characters or fewer
ask-birth = Born must be a year or a month and a year, like 2019 or 3/2019. An age must be a number
ask-breed-long = Breed must be 80 characters or fewer
ask-reason = Enter why this changes
ask-reason-long = Why this change must be 200 characters or fewer

changes-title = Changes not in the record yet
patient-not-in-record = This animal is not in the record yet:
visit-not-today = Not today: { $why }
visit-stopped = Stopped: { $why }
visit-why-breathing = breathing was not easy
visit-why-not-responsive = not awake and responsive
visit-why-in-pain = in pain
visit-why-not-safe = not safe to handle
visit-why-too-distressed = too distressed
visit-why-bite-or-scratch = bite or scratch
visit-why-owner-refused = the owner did not want it
visit-why-no-cuff = no cuff fitted
visit-why-equipment = the equipment failed
visit-why-other = another reason

outbox-patient-changed = { $name }, changed
outbox-bag = Bag { $name }, added
outbox-bag-changed = Bag { $name }, changed
outbox-outcome = { $name }, visit without a full measurement
outbox-filed = Filed { $when }
outbox-why = Reason given: { $reason }
outbox-waits = It goes out by itself when there is a network and the app is open.
outbox-open-bag = Show the bags
outbox-training = Nothing of training is ever sent. What is not sent is the record's: go back to it to see that.
outbox-elsewhere = { $n ->
    [0] No entry of another practice waits on this phone.
    [one] 1 entry of another practice waits on this phone. It goes out when somebody of that practice signs in here.
   *[other] { $n } entries of another practice wait on this phone. They go out when somebody of that practice signs in here.
  }

## first minutes, help, training

page-title-training = Training: { $title }
training-word = Training: not the record
training-not-filed = Training: not filed in the record.
state-training = Training only
help-back = Back
install-title = On the home screen
install-first = Put it on the home screen first
install-why = Do this before the first entry: the app on the home screen keeps its own store, apart from the browser's, and browsers clear what belongs to a tab sooner.
install-ask = Put it on the home screen
install-share = Tap the browser's share button, then Add to Home Screen. Open the app from there.
install-menu = Open the browser's menu, then Add to Home screen or Install. Open the app from there.
install-desk = Open the browser's menu, then Install. Open the app from there.
install-browser = Go on in the browser
ready-not-line = Not ready to work without a network: what is missing

## rules: verdicts, cautions, categories, how this was worked out

verdict-steady = Readings agree
verdict-steady-more = The readings agree with each other. They can still all be too high if the animal is not yet calm.
verdict-falling = Coming down: go on until they agree
verdict-scattered = Scattered: too far apart to average
verdict-scattered-suspects = Scattered: look again at { $values }
verdict-too-few = Too few: { $n ->
    [one] 1 more needed
   *[other] { $n } more needed
  }
verdict-too-few-again = { $n ->
    [one] Above gauge: 1 more
   *[other] Above gauge: { $n } more
  }
verdict-none = No readings yet

standing-counted = counts
standing-earlier = before the readings that agree
standing-provisional = may count
standing-first = first of the set, does not count
standing-by-hand = set aside: { $reason }
standing-no-number = no number
standing-impossible = not possible, does not count
standing-impossible-short = does not count

set-aside-moved = Moved
set-aside-tensed = Tensed
set-aside-purred = Purred
set-aside-shivered = Shivered
set-aside-panted = Panted
set-aside-noise-near = Noise near
set-aside-sound-lost = Pulse sound lost
set-aside-released-too-fast = Let down too fast
set-aside-pumped-too-little = Pumped too little
set-aside-cuff-slipped = Cuff slipped
set-aside-device-code = Machine code
set-aside-pulse-differs = Pulse differs
set-aside-irregular-beat = Irregular beat
set-aside-other = Another reason

fit-good = good fit
fit-usable = usable fit
fit-poor = poor fit
expect-reads-high = Expect values that are too high: the cuff is narrow for this limb.
expect-reads-low = Expect values that are too low: the cuff is wide for this limb.

category-minimal = minimal risk of organ damage (below { $low })
category-low = low risk of organ damage ({ $low }–{ $high })
category-moderate = moderate risk of organ damage ({ $low }–{ $high })
category-high = high risk of organ damage ({ $low } and above)
band-line = The mean of { $mean } mmHg on a line with the edges of the bands
withheld-title = Not placed in a risk band
withheld-sedated = The animal is sedated: a number and no band.
withheld-not-adult = The bands are for adults, from { $months } months.
withheld-too-few = Too few readings to place it.
withheld-falling = The readings are still coming down.
withheld-scattered = The readings are too scattered to place it.
withheld-low-pressure = The mean is below { $low } mmHg. The bands are about high pressure.
withheld-height = Corrected for the height of the cuff it would fall into another band.
withheld-cuff = The cuff fits too poorly to place it.
firmness-firm = Firm.
firmness-with-care = With care: see what may be wrong.
firmness-not-placed = Not placed.
leaning-high = The value may be too high.
leaning-low = The value may be too low.
leaning-either = The value may be wrong either way.
near-edges = { $n ->
    [one] Close to the edge at { $edges }: the band on its other side is possible too.
   *[other] Close to the edges at { $edges }: the bands beside it are possible too.
  }
advice-enough = { $from } or above each time is enough to act on, without an average.
advice-stop-today = Stop for today. The animal's comfort comes before a complete series.
advice-go-on = Go on with this set when the animal allows it.
advice-second-look = Leave cuff and animal in peace for { $minutes } minutes, then take three more readings in this set.
bounds-every = Every reading
bounds-latest = Each of the latest { $n } readings that may count
bounds-at-least = { $who } was { $at_least } or above.
bounds-below = { $who } was below { $below }.
bounds-both = { $who } was { $at_least } or above and below { $below }.

result-mean-line = { $mean } mmHg from { $n ->
    [one] 1 reading.
   *[other] { $n } readings.
  }
result-mean-provisional = { $mean } mmHg, for orientation only: the readings do not agree yet.
result-mean-too-few = { $mean } mmHg, for orientation only: too few readings.
result-above-gauge = { $n ->
    [one] 1 attempt above the gauge is not in it: the pressure is higher than this number.
   *[other] { $n } attempts above the gauge are not in it: the pressure is higher than this number.
  }
result-no-mean = No mean: nothing counts yet.
result-above-only = { $n ->
    [one] 1 reading was above the gauge.
   *[other] { $n } readings were above the gauge.
  }
result-spread = They differ by { $spread } of their mean; standard deviation { $sd } mmHg.
result-interval = If you went on now, the average would probably stay between { $low } and { $high }. Another day it can easily differ by 20 or more.
result-three = Systolic { $systolic }, mean { $mean }, diastolic { $diastolic } mmHg.
result-systolic-mean = Systolic { $systolic }, mean { $mean } mmHg.
result-systolic-diastolic = Systolic { $systolic }, diastolic { $diastolic } mmHg.
result-pulse = Pulse { $pulse } a minute.
result-used = { $used } of { $all } readings used.
result-set = Result of set { $n }.
result-height = The cuff was { $cm } cm { $where } the heart. Corrected for that the mean would be { $mean } mmHg.
result-height-band = The band is placed on what was measured.
height-word-above = above
height-word-below = below
cautions-title = What may be wrong
cautions-minor = Also noted
cautions-none = Nothing noted that bends the value.
direction-high = may be too high
direction-low = may be too low
direction-either = may be wrong either way

caution-rest-short = Rested less than { $minutes } minutes
caution-rest-not-noted = Quiet time was not noted
caution-tense = The animal was tense
caution-fighting = The animal was fighting
caution-calmed = A calming drug was on board
caution-cuff-narrow = The cuff is narrow for this limb
caution-cuff-wide = The cuff is wide for this limb
caution-cuff-unknown = Limb circumference or cuff width was not noted
caution-height-off = The cuff was { $cm } cm or more off the level of the heart
caution-irregular-rhythm = The rhythm is irregular
caution-oscillometric-high = A machine measures high pressures too low; this mean is { $from } or more
caution-oscillometric-small = A machine is less sure on a limb under { $cm } cm
caution-many-set-aside = More than one reading in { $one_in } was set aside
caution-one-sided = All readings set aside lie on the same side of the others
caution-rising = The readings rise: the animal may be growing tense
caution-pulse-differs = The machine's pulse and the pulse felt differ
caution-sitting-up = Measured sitting up
caution-gap-short = Less than { $seconds } seconds between two readings
caution-gap-unknown = Readings were entered together, afterwards: their gaps are not known
caution-odd-gauge-value = A value between the marks of the gauge, which goes in steps of { $step }
caution-not-comparable = Measured differently from last time: compare with care
caution-unlikely-confirmed = An unusual value was kept

worked-here = Here:
worked-here-nothing = nothing to say.
worked-here-no-cuff = limb circumference or width used was not noted.
worked-sources = { $n ->
    [one] 1 source, and how certain it is
   *[other] { $n } sources, and how certain they are
  }
sentence = { $words }.
worked-title = How this was worked out
worked-rules = Rule set { $name }
worked-readings = Every reading
worked-rule-cuff = Cuff
worked-cuff = The cuff should be { $target } of the circumference. Good from { $good_low } to { $good_high }, usable from { $usable_low } to { $usable_high }. Between two sizes that fit alike the larger, from { $between } of the gap on.
worked-rule-standing = What each reading counts for
worked-standing = The first reading of a set does not count. Possible are systolic { $sys_low }–{ $sys_high }, mean { $mean_low }–{ $mean_high }, diastolic { $dia_low }–{ $dia_high } mmHg, systolic above mean above diastolic. Only a person sets a reading aside.
worked-rule-agreement = Do the readings agree
worked-agreement = The latest { $least } to { $most } readings must lie within { $even } of their mean, and the later half may be lower than the earlier by { $fall_mmhg } mmHg or { $fall } at most. With an irregular rhythm { $irregular_least } to { $irregular_most } readings are averaged without this test.
worked-rule-averaging = Average
worked-averaging = The mean of the readings that count, rounded half up to a tenth. The interval is Student's t for 95 %, from { $from_n } readings on.
worked-rule-bounds = What holds without an average
worked-bounds = With { $least } readings or more that do not agree, the latest { $latest } are held against { $at_least } from below and { $below } from above. From { $decides } on that is enough to act on.
worked-rule-height = Cuff against the heart
worked-height = In dogs, beyond { $level_cm } cm: { $per_cm } mmHg for each cm of the whole distance, shown beside the raw mean. Cats are not corrected.
worked-rule-category = Risk of organ damage
worked-category = Edges at { $low }, { $moderate } and { $high } mmHg on the raw mean; below { $low_pressure } no band; adults from { $months } months. Within { $near } mmHg of an edge, or the interval if it is wider, both bands are possible.
worked-rule-cautions = Cautions
worked-cautions = Each says which way it bends the value. None of them blocks anything.
source-published-read = published, read: { $why }
source-published-not-read = published, not re-read by us: { $why }
source-common-practice = common practice: { $why }
source-from-memory = from memory: { $why }
source-project = our own figure: { $why }
caution-line = { $caution }: { $direction }.
worked-pulse = pulse { $pulse }

## sync: saved, sending, in the record, needs you

# The four words, the same everywhere.
sync-waiting = Saved on this phone
sync-sending = Sending
sync-stored = In the record
sync-needs-you = Needs you

# The line that is always in sight; none is said too. $when and $since are ready-made times.
sync-unsent = { $count ->
    [0] All sent
    [one] { $count } not sent
   *[other] { $count } not sent
 }
sync-all-sent-at = All sent, last { $when }
sync-oldest = oldest { $since }
sync-needing-you = { $count ->
    [one] { $count } needs you
   *[other] { $count } need you
 }
sync-last-sent = Last sent { $when }
sync-last-pulled = Record as of { $when }
sync-never-pulled = The record has not been fetched to this phone yet.
sync-next-try = Tries again { $when }
sync-send-now = Send now
sync-keep-open = Keep the app open while it sends.
sync-sign-in-needed = Sign in to read the record again. What you file goes on being handed in without it.
sync-sign-in-to-send = The server does not know this phone any more. Sign in to send. Everything stays saved on this phone.
sync-server-differs = The record's own working-out differs from this phone's. The record's stands; both are shown.
sync-kept-by-browser = The browser has promised to keep what is stored on this phone.
sync-not-kept-by-browser = { $waiting ->
    [0] The browser may clear what is stored here when it runs out of room. Add the app to the home screen.
   *[other] The browser may clear what is stored here when it runs out of room. Add the app to the home screen, and send soon.
 }
sync-of-record = The record: { $count }
sync-tries = { $count ->
    [one] Failed { $count } time while others went through.
   *[other] Failed { $count } times while others went through.
 }

# Why nothing gets through just now.
network-no-network = No network. Everything is saved on this phone and goes out by itself later.
network-timed-out = The network is too slow just now. Everything is saved on this phone; it is tried again by itself.
network-not-ours = This network answers in place of our server. Open a web page and sign in to the network, or use another.
network-not-understood = The answer arrived damaged, so nothing in it was trusted. It is tried again by itself.
network-busy = The server is busy. It is tried again by itself.
network-server-trouble = The server has a fault. Everything is saved on this phone; it is tried again by itself.
network-practice-closed = The server does not take entries from this phone for this practice. Nothing is lost: ask who runs your practice's record.
network-app-too-old = This app is too old to read the record. Close it and open it again with network. What you file is still handed in.
network-record-differs = The record fetched does not fit what this phone has read before. Nothing of it was taken over. Tell who runs your practice's record.

# What is wrong with the phone's own store.
storage-blocked = An older window of this app keeps the store closed. Close its other windows, then open this one again.
storage-reload-needed = A newer window of this app needs the store. What was saved is safe: load this window again.
storage-lost = The browser has let go of the store and does not give it back. What is on the screen is not saved yet: note it down, then load again.
storage-full = There is no room left on this phone. What is on the screen is not saved yet: make room, then try again.

# Why an act was not done.
phone-sign-in-needed = Sign in first.
phone-already-filed = This was filed already, perhaps in another window.
phone-not-valid = This cannot be filed yet.
phone-too-large = This is too long to be filed.
phone-wrong-login = Name or password is not right.
phone-wait = Too many tries. Wait a little, then try again.

# Why an entry needs a person, by the server's code or the phone's own.
entry-held = The record keeps this aside until somebody decides.
entry-refused = The record did not take this. It is safe on this phone.
entry-set-aside = This failed several times while others went through. It is safe on this phone and is tried every hour.
entry-unreadable = This phone can no longer open this entry.
entry-patient-missing = No animal is named in it. File it again for an animal.
entry-id-conflict = The record has another entry of the same id. This one is safe on this phone: tell who runs your practice's record.

## errors: what went wrong and what to do

# Ids are `error-` and the code of a problem, or of an answer to one entry, with hyphens. Each says what to do.
error-sign-in-wrong = The login or the password is not right. Check both and try again.
error-too-many-tries = Too many tries. Wait a quarter of an hour, then try again. What is saved on this phone stays.
error-sign-in-needed = Sign in to read the record. What is saved on this phone is still handed in.
error-device-unknown = The server does not know this phone any more. Sign in; nothing saved on this phone is lost.
error-role-not-allowed = Your role may not do this. Ask a manager of your practice.
error-request-not-ours = This request did not come from the app itself and was refused. Open the app again and retry.
error-not-found = There is nothing here, or it is not yours to see.
error-method-not-allowed = The server does not do this here.
error-request-wrong = The server could not make sense of this request.
error-query-wrong = A part of this address is not in the form that is needed.
error-media-type-wrong = The server does not take this form of data here.
error-too-large = This is larger than the server takes at once.
error-server-error = Something went wrong on the server. Nothing on this phone is lost; try again later.
error-record-busy = The record is busy. It is tried again by itself.
error-migration-needed = The server was updated and its database not yet. Run: quietcuff migrate
error-journal-unguarded = The database no longer keeps the journal from being changed. Stop the server and find out what was done to it.
error-database-unready = The server cannot write to its database. Look at its disk and its log.
error-client-not-built = The app is not built on this server yet. Run: python3 -m demo --prepare
error-cursor-void = The record on the server was restored. This phone reads it anew and offers again what it filed.
error-bundle-too-large = Too much was handed in at once. It is tried again in smaller parts.
error-too-many-entries = Too many entries were handed in at once. It is tried again in smaller parts.
error-encoding-unknown = The server does not know this way of packing data. Update the app.
error-gzip-damaged = What was handed in was damaged on the way. It is tried again.
error-bundle-unreadable = What was handed in cannot be read as a whole. Update the app, then try again.
error-device-revoked = This phone was taken off the practice. What it handed in is kept on the server until a person decides.
error-device-expired = This phone was away for too long. Sign in on it. What it handed in is kept on the server until a person decides.
error-practice-differs = What was handed in names another practice. Sign in at the practice it was made for.
