/** How fast a screw may turn and how hard it may be pushed. */
import { formula } from '../../../kernel/index.ts';
import { length, root, STEEL_DENSITY, STEEL_MODULUS } from './axis-takes.ts';

/**
 * Turning speed at which a screw whips.
 *
 * ω_c = C·(π/L)^2·(d/4)·√(E/ρ)
 * @param root d, root diameter of the screw [m]
 * @param length L, length between the supports [m]
 * @param ends C, factor of the end supports [-]
 * @param modulus E, modulus of the screw [Pa]
 * @param density ρ, density of the screw [kg/m³]
 * @returns ω_c [rad/s]
 * @throws OutsideRange when an input lies outside its range
 */
export const criticalSpeed = formula({
  name: 'screw-critical-speed',
  gives: { symbol: 'ω_c', of: 'angular-speed', means: 'turning speed at which the screw whips' },
  takes: {
    root: { ...root, slope: 'up', typical: [0.006, 0.02] },
    length: { ...length, slope: 'down', typical: [0.2, 1] },
    ends: {
      symbol: 'C',
      of: 'ratio',
      above: 0,
      means: 'factor of the end supports',
      because: 'a screw is held',
      slope: 'up',
      typical: [0.36, 2.23],
    },
    modulus: {
      symbol: 'E',
      of: 'pressure',
      above: 0,
      otherwise: STEEL_MODULUS,
      means: 'modulus of the screw',
      because: 'it is elastic',
      slope: 'up',
      typical: [1.9e11, 2.1e11],
    },
    density: {
      symbol: 'ρ',
      of: 'density',
      above: 0,
      otherwise: STEEL_DENSITY,
      means: 'density of the screw',
      because: 'it is heavy',
      slope: 'down',
      typical: [7800, 7900],
    },
  },
  steps: ({ root: d, length: L, ends: C, modulus: E, density: ρ }, step) =>
    step('ω_c', 'C*(pi/L)^2*(d/4)*sqrt(E/ρ)', C * (Math.PI / L) ** 2 * (d / 4) * Math.sqrt(E / ρ), 'angular-speed'),
  assumes: ['a round bar of the root diameter', 'the nut does not support it'],
  source: [{ id: 'screw-critical-speed' }],
  checked: [
    {
      kind: 'published',
      against: 'C·4.76·10⁶·d/L² in inches and rpm',
      source: { id: 'screw-critical-speed' },
    },
  ],
  accuracy: 'about 10 % for straight screws; one that is bent whips earlier',
});

/**
 * Force under which a screw buckles.
 *
 * I = π·d^4/64
 * F_b = C·π^2·E·I/L^2
 * @param root d, root diameter of the screw [m]
 * @param length L, length between the supports [m]
 * @param ends C, factor of the end supports [-]
 * @param modulus E, modulus of the screw [Pa]
 * @returns F_b [N]
 * @throws OutsideRange when an input lies outside its range
 */
export const bucklingForce = formula({
  name: 'screw-buckling',
  gives: { symbol: 'F_b', of: 'force', means: 'force under which the screw buckles' },
  takes: {
    root: { ...root, slope: 'up', typical: [0.006, 0.02] },
    length: { ...length, slope: 'down', typical: [0.2, 1] },
    ends: {
      symbol: 'C',
      of: 'ratio',
      above: 0,
      means: 'factor of the end supports',
      because: 'a screw is held',
      slope: 'up',
      typical: [0.25, 4],
    },
    modulus: {
      symbol: 'E',
      of: 'pressure',
      above: 0,
      otherwise: STEEL_MODULUS,
      means: 'modulus of the screw',
      because: 'it is elastic',
      slope: 'up',
      typical: [1.9e11, 2.1e11],
    },
  },
  steps: ({ root: d, length: L, ends: C, modulus: E }, step) => {
    const I = step('I', 'pi*d^4/64', (Math.PI * d ** 4) / 64, 'second-moment');
    return step('F_b', 'C*pi^2*E*I/L^2', (C * Math.PI ** 2 * E * I) / L ** 2, 'force');
  },
  assumes: ['a slender round bar of the root diameter', 'pushed along its middle'],
  source: [{ id: 'screw-buckling', at: 'eq. 5' }],
  checked: [
    {
      kind: 'published',
      against: 'half of it: 1.3, 10 and 20·10⁴·d⁴/L² N, d and L in mm',
      source: { id: 'screw-buckling', at: 'eq. 5' },
    },
  ],
  accuracy: 'upper bound for straight screws',
});
