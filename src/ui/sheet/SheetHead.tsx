import styles from './Sheet.module.css';
import type { SheetData } from './sheetModel.ts';

export function SheetHead({ data: { rowTitle, columns } }: { readonly data: SheetData }) {
  return (
    <thead>
      <tr aria-rowindex={1}>
        <th scope="col" className={styles.corner}>
          {rowTitle}
        </th>
        {columns.map(({ key, title, unit, isNumber }) => (
          <th key={key} scope="col" data-number={isNumber}>
            {title}
            {unit && <span className={styles.unit}> {unit}</span>}
          </th>
        ))}
      </tr>
    </thead>
  );
}
