package mix

// StrengthSlack is the slack of [Mixer.StrongestPoured], for its tests.
const StrengthSlack = strengthSlack
