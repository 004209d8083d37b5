/** A share as people read it: `94 %`; more digits where rounding would move it across its limit. */
export const percentText = (share: number): string => {
  if (Number.isNaN(share)) return 'no number';
  if (!(share > 0)) return '0 %';
  if (share > 9.995) return 'over 999 %';
  const percent = share * 100;
  const least = percent < 9.95 ? 1 : 0;
  const decimals = [least, 1, 2, 3].find((d) => share === 1 || percent > 100 === Number(percent.toFixed(d)) > 100);
  if (decimals === undefined) return 'just over 100 %';
  const shown = percent.toFixed(decimals);
  return share < 1 && Number(shown) >= 100 ? 'just under 100 %' : `${shown} %`;
};
