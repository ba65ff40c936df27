package mix

// Densities at 20 °C in g/mL.
const (
	EthanolDensity = 0.78924 // OIML R 22, p = 1
	WaterDensity   = 0.99820 // OIML R 22, p = 0
	// sucroseDensity is that of the crystal: CRC Handbook of Chemistry and
	// Physics; Sugar Technologists Manual (from memory).
	sucroseDensity = 1.5879
)

// The general formula of OIML R 22 (1975), International Alcoholometric
// Tables; the same coefficients stand in Council Directive 76/766/EEC.
var (
	oimlA = [12]float64{
		9.982012300e2, -1.929769495e2, 3.891238958e2, -1.668103923e3,
		1.352215441e4, -8.829278388e4, 3.062874042e5, -6.138381234e5,
		7.470172998e5, -5.478461354e5, 2.234460334e5, -3.903285426e4,
	}
	oimlB = [6]float64{
		-2.0618513e-1, -5.2682542e-3, 3.6130013e-5,
		-3.8957702e-7, 7.1693540e-9, -9.9739231e-11,
	}
	oimlC = [5][]float64{
		{
			1.693443461530087e-1, -1.046914743455169e1, 7.196353469546523e1, -7.047478054272792e2,
			3.924090430035045e3, -1.210164659068747e4, 2.248646550400788e4, -2.605562982188164e4,
			1.852373922069467e4, -7.420201433430137e3, 1.285617841998974e3,
		},
		{
			-1.193013005057010e-2, 2.517399633803461e-1, -2.170575700536993, 1.353034988843029e1,
			-5.029988758547014e1, 1.096355666577570e2, -1.422753946421155e2, 1.080435942856230e2,
			-4.414153236817392e1, 7.442971530188783,
		},
		{
			-6.802995733503803e-4, 1.876837790289664e-2, -2.002561813734156e-1, 1.022992966719220,
			-2.895696483903638, 4.810060584300675, -4.672147440794683, 2.458043105903461,
			-5.411227621436812e-1,
		},
		{
			4.075376675622027e-6, -8.763058573471110e-6, 6.515031360099368e-6, -1.515784836987210e-6,
		},
		{
			-2.788074354782409e-8, 1.345612883493354e-8,
		},
	}
)

// Coldest and hottest temperatures, in °C, for which OIML R 22 holds.
const (
	OIMLMinC = -20.0
	OIMLMaxC = 40.0
)

// ethanolWater returns the density in g/mL of a mixture of ethanol and water at
// celsius, by the general formula of OIML R 22:
//
//	ρ = A₁ + Σ A_k p^(k−1) + Σ B_k (t−20)^k + Σ C_ik p^k (t−20)^i
//
// The argument p is the mass fraction of ethanol, 0 to 1. The formula holds from
// [OIMLMinC] to [OIMLMaxC]; nothing checks either.
func ethanolWater(p, celsius float64) float64 {
	dt := celsius - 20
	rho := ethanolWater20(p) * 1000
	rho += dt * horner(oimlB[:], dt)
	dtk := dt
	for _, c := range oimlC {
		rho += dtk * p * horner(c, p)
		dtk *= dt
	}
	return rho / 1000
}

// ethanolWater20 is ethanolWater at 20 °C, for inner loops.
func ethanolWater20(p float64) float64 { return horner(oimlA[:], p) / 1000 }

// horner evaluates c[0] + c[1]x + c[2]x² + …, the even and the odd powers side
// by side, which a processor does in half the time.
func horner(c []float64, x float64) float64 {
	var even, odd float64
	i := len(c) - 1
	if i%2 == 0 {
		even = c[i]
		i--
	}
	for square := x * x; i > 0; i -= 2 {
		odd = odd*square + c[i]
		even = even*square + c[i-1]
	}
	return even + x*odd
}

// volumeFraction returns the strength at 20 °C, as a fraction by volume, of an
// ethanol-water mixture whose mass fraction of ethanol is p, 0 to 1:
// q = p ρ(p)/ρ(1), OIML R 22.
func volumeFraction(p float64) float64 { return p * ethanolWater20(p) / EthanolDensity }

// MassFraction is the inverse of [volumeFraction]: the mass fraction of
// ethanol for a strength at 20 °C given as a fraction by volume, 0 to 1. What
// lies outside comes back as the nearer end.
func MassFraction(q float64) float64 {
	return Bisect(0, 1, func(p float64) bool { return volumeFraction(p) < q })
}

// Bisect returns where low turns from true to false between lo and hi, to
// within a part in 2⁵⁰ of that interval.
func Bisect(lo, hi float64, low func(float64) bool) float64 {
	for range 50 {
		mid := (lo + hi) / 2
		if low(mid) {
			lo = mid
		} else {
			hi = mid
		}
	}
	return (lo + hi) / 2
}

// icumsa holds b1 to b6 of the sucrose density equation of ICUMSA SPS-4
// (Bubnik, Kadlec, Urban, Bruhns, Sugar Technologists Manual, 1995), in kg/m³.
var icumsa = [6]float64{385.1761, 135.3705, 40.9299, -3.9643, 13.4853, -17.289}

// SyrupDensity returns the density in g/mL at 20 °C of sucrose in water,
// ρ = ρ(water) + Σ bᵢ wⁱ, with w the mass fraction of sucrose, 0 to 1 (Brix
// over 100). Tables reach 0.80; beyond, up to a melt, it is an extrapolation
// that ends 2 % below the density of the crystal.
func SyrupDensity(w float64) float64 {
	return WaterDensity + w*horner(icumsa[:], w)/1000
}

// soluteVolume returns the volume in mL that solute grams of dissolved solids
// take up in water grams of water: the apparent volume of sucrose at that
// share, 0.615 mL/g in thin syrup to 0.635 in thick. Without water it is the
// volume of the crystals.
func soluteVolume(solute, water float64) float64 {
	if solute <= 0 {
		return 0
	}
	if water <= 0 {
		return solute / sucroseDensity
	}
	return (solute+water)/SyrupDensity(solute/(solute+water)) - water/WaterDensity
}
