package training

// What the tests of this folder look at from outside.

const CloseTest = closeTest
const Day = day
const FlightPath = flightPath
const KeepPicks = keepPicks
const MaxName = maxName
const NameCookie = nameCookie
const NameSeconds = nameSeconds
const ProgressPath = progressPath
const StarterPath = starterPath
const TrainingPath = trainingPath
const TrianglePath = trianglePath

type SkillRow = skillRow
type TeamRow = teamRow

var AsText = asText
var DueText = dueText
var PercentOf = percentOf
var PersonOf = personOf
var PickField = pickField
var ReadSeed = readSeed
var SkillRowOf = skillRowOf
var TeamRowOf = teamRowOf
var WhyText = whyText
