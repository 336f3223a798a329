### How to do each step, for people still learning, and what the words mean. Common practice; loaded with the screens that show it.
### A figure is never written here: it comes in from the rule documents. One sentence an entry; no card has more than six.

## guide: titles and captions

guide-title-ready = How to: before you begin
guide-title-calm = How to: let it settle
guide-title-cuff = How to: measure the limb and fit the cuff
guide-title-site = How to: place cuff and probe
guide-title-posture = How to: position the animal
guide-title-level = How to: level with the heart
guide-title-readings = How to: take the readings
guide-title-result = How to: read the result
guide-tape = Tape once round
guide-cuff-narrow = Too narrow
guide-cuff-fitting = Fitting
guide-cuff-wide = Too wide

## guide: ready

guide-ready-1 = Look first, without touching: breathing, alertness, pain, temper.
guide-ready-2 = Laboured breathing, collapse, a seizure or cold, painful hind limbs: do not measure, help first.
guide-ready-3 = If it may bite or scratch, stop and follow your practice's own rule.
guide-ready-4 = Measure before anything else is done to it.
guide-ready-dog-1 = A panting dog first needs a cool, quiet place.
guide-ready-cat-1 = Let the cat come out by itself, or measure it in its own basket.
guide-ready-doppler-1 = Lay out probe, gel and headphones where you can reach them without getting up.
guide-ready-oscillometric-1 = Switch the machine on now, so that its first noises are over.

## guide: calm

guide-calm-1 = Choose a quiet room away from other animals, with the owner there if that calms it.
guide-calm-2 = Give it at least { $minutes } minutes, and longer while it still watches you.
guide-calm-3 = Hold it as little as possible.
guide-calm-4 = Struggling, growling, open-mouthed breathing or a frozen, crouching animal: let go, and wait or stop for today.
guide-calm-dog-1 = Let the dog lie down where it likes, and sit on the floor beside it.
guide-calm-cat-1 = Keep dogs out of sight and hearing, and leave its head covered if it hides.
guide-calm-doppler-1 = Use headphones: the sound of the probe is new to it.
guide-calm-oscillometric-1 = Put the cuff on early, so that it is forgotten before the first reading.

## guide: cuff

guide-cuff-1 = Lay the tape once round the limb where the middle of the cuff will lie, snug and without pressing.
guide-cuff-2 = Too narrow reads too high, too wide reads too low.
guide-cuff-3 = Between two sizes take the larger one, and the same one at the next visit.
guide-cuff-dog-1 = For a dog aim at a cuff width of { $target } of the circumference; { $low } to { $high } fits well.
guide-cuff-cat-1 = For a cat a cuff width of { $low } to { $high } of the circumference fits well; aim at { $target }.
guide-cuff-cat-2 = Lay the tape above the elbow if the cuff goes there: the limb is thicker than at the forearm.
guide-cuff-doppler-1 = Wrap it snug, the middle of its bladder over the artery.
guide-cuff-oscillometric-1 = Wrap it snug, the middle of its bladder over the artery, and let the hose lie without a kink.

## guide: site

guide-site-1 = Take the limb and the site of the last visit, so that the two compare.
guide-site-2 = Leave out wounds, swellings, bandages and limbs with a catheter.
guide-site-dog-1 = In dogs the forearm is usual; the tail base and the hind limb are good seconds.
guide-site-cat-1 = In cats the cuff goes above the elbow or on the tail base, whichever the cat minds less.
guide-site-doppler-1 = Part or clip the hair, use plenty of gel, and find the sound before you pump.
guide-site-doppler-2 = Hold the probe lightly, since pressing closes the artery.
guide-site-oscillometric-1 = No hand lies on the cuff or its hose, and no probe is needed.

## guide: posture

guide-posture-1 = Choose a posture that it keeps by itself, and the same one at the next visit.
guide-posture-2 = The limb with the cuff is loose and carries no weight.
guide-posture-dog-1 = Dogs lying on their side read lower and steadier than sitting ones.
guide-posture-cat-1 = In the lap of its owner, or on its chest, a cat may hide its head.
guide-posture-doppler-1 = Sit so that one hand can hold the probe for the whole series without moving.
guide-posture-oscillometric-1 = A machine needs a limb that lies quite still.

## guide: level

guide-level-1 = Standing or on its chest, the heart base is about as high as the point of the shoulder.
guide-level-2 = On its side, it is about as high as the breastbone.
guide-level-3 = Lift or pad the limb until the cuff lies at that height.
guide-level-4 = A cuff below the heart reads too high, a cuff above it too low.
guide-level-dog-1 = If it cannot be level, note the distance: beyond { $level_cm } cm a corrected value stands beside the mean.
guide-level-cat-1 = If it cannot be level, note the distance: in cats nothing is corrected.

## guide: readings

guide-readings-1 = The first reading does not count; take { $least } to { $most } after it that agree.
guide-readings-2 = Between two readings let the cuff down fully and wait { $gap } seconds.
guide-readings-3 = Stop at distress or a threat to bite, and after { $stop } readings without agreement.
guide-readings-doppler-1 = Pump until the sound is gone and a little further.
guide-readings-doppler-2 = Let the pressure down slowly, one mark of the gauge at each beat.
guide-readings-doppler-3 = The first sound that comes back is the systolic pressure.
guide-readings-oscillometric-1 = Start the machine and keep limb, cuff and hose still until it shows a value.
guide-readings-oscillometric-2 = Feel the pulse: if the machine counts another one, set that reading aside.
guide-readings-oscillometric-3 = Enter an attempt without a value too.

## guide: result

guide-result-1 = First see whether the readings agree, then how firm the result is, then the band.
guide-result-2 = A high value in a tense animal is measured again, after more quiet or on another day.
guide-result-3 = A veterinarian reads it together with eyes, brain, kidneys and heart.
guide-result-dog-1 = Sighthounds often read higher than other dogs.
guide-result-cat-1 = A worried cat can read high and be healthy.
guide-result-doppler-1 = By Doppler the systolic pressure is the one to rely on.
guide-result-oscillometric-1 = A machine tends to read high pressures too low: when in doubt, repeat with a probe.

## glossary: what the words mean

glossary-sites = Sites
glossary-postures = Postures
glossary-demeanour = Demeanour
glossary-readings = Readings
glossary-firmness = How firm

about-site-forearm = Between elbow and wrist; the probe goes behind the paw, above its large pad.
about-site-above-elbow = Round the upper arm, close above the elbow; the probe goes behind the paw, above its large pad.
about-site-above-hock = Round the lower thigh, close above the hock; the probe goes on the front of the foot, below the hock.
about-site-metatarsus = Between hock and toes; the probe goes behind the foot, above its large pad.
about-site-tail-base = Round the tail, close to the body; the probe goes under the tail.
about-posture-lateral = Lying on one side, head down.
about-posture-sternal = Lying on chest and belly, forelimbs in front or folded.
about-posture-sitting = Sitting up by itself.
about-posture-standing = On all four feet.
about-posture-in-lap = Lying or sitting in the lap of somebody it trusts.
about-demeanour-sleepy = Eyes half closed, does not mind the cuff.
about-demeanour-calm = Awake, loose, watches without pulling away.
about-demeanour-tense = Stiff or crouched, pulls the limb away, wide pupils, ears back.
about-demeanour-fighting = Struggles, threatens or tries to get away: stop.
glossary-agree = Agree
about-agree = The latest readings lie close together and no longer fall: they can be averaged.
glossary-coming-down = Coming down
about-coming-down = Later readings are lower than earlier ones: the animal is still settling, go on.
glossary-scattered = Scattered
about-scattered = The readings lie too far apart to average.
glossary-firm = Firm
about-firm = Nothing was noted that bends the value.
glossary-with-care = With care
about-with-care = Something was noted that may bend the value; it says which way.
glossary-not-placed = Not placed
about-not-placed = There is a number, and no band, and the reason is given.
