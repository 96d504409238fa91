import { expect, it } from 'vitest';
import type { App } from '../app';
import { isEquipmentAsked, openEquipment, takeEquipmentAsk } from './equipment-open';

it('takes the dose that asks along, once', () => {
  const steps: unknown[] = [];
  const app = { setView: (view: unknown) => steps.push(view) } as unknown as App;
  const dose = { productId: 'p', kgPerM2: 0.01, coats: 2 } as const;
  openEquipment(app, 'e', 'catch', dose);
  expect(steps).toEqual([{ step: 'shelf' }]);
  expect(takeEquipmentAsk()).toEqual({ equipmentId: 'e', kind: 'catch', dose });
  expect([isEquipmentAsked(), takeEquipmentAsk()]).toEqual([false, null]);
});
