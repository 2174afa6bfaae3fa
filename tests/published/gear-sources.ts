/** The books whose printed figures the gears are held to. */
export const MOTT = 'R. L. Mott, Machine Elements in Mechanical Design, 4th ed. (Pearson, 2004)'
export const SHIGLEY =
  "R. G. Budynas and J. K. Nisbett, Shigley's Mechanical Engineering Design (8th to 10th ed.)"
export const JINDAL = 'U. C. Jindal, Machine Design, 1st ed. (2010), worked-example companion'
export const METRIC = 'SDP/SI, Elements of Metric Gear Technology, and KHK Gear Technical Reference'
export const JIANG = 'W. Jiang, Analysis and Design of Machine Elements (Wiley, 2019)'
export const LITVIN =
  'F. L. Litvin and A. Fuentes, Gear Geometry and Applied Theory, 2nd ed. (Cambridge, 2004)'
export const WENTZELL = 'T. H. Wentzell, Machine Design, 1st ed. (Cengage, 2007), worked-example companion'
export const BHANDARI = 'V. B. Bhandari, Design of Machine Elements, worked-example companion'
export const KHURMI = 'R. S. Khurmi and J. K. Gupta, Theory of Machines, 14th ed. (Eurasia, 2009)'
export const KHURMI_MECHANICS = 'R. S. Khurmi, Engineering Mechanics, worked-example companion'
export const BANSAL = 'R. K. Bansal, Engineering Mechanics, worked-example companion'
