// Zip files without compression, for uploads that must be refused (APPNOTE.TXT 4.3).
import { crc32 } from 'node:zlib';

export function zip(entries) {
  const locals = [];
  const central = [];
  let offset = 0;
  for (const { name, data } of entries) {
    const label = Buffer.from(name);
    const common = Buffer.alloc(26);
    common.writeUInt16LE(20, 0);
    common.writeUInt32LE(crc32(data), 10);
    common.writeUInt32LE(data.length, 14);
    common.writeUInt32LE(data.length, 18);
    common.writeUInt16LE(label.length, 22);
    const local = Buffer.concat([Buffer.from('PK\x03\x04', 'latin1'), common, label, data]);
    const tail = Buffer.alloc(14);
    tail.writeUInt32LE(offset, 10);
    central.push(Buffer.concat([Buffer.from('PK\x01\x02', 'latin1'), Buffer.from([20, 0]), common, tail, label]));
    locals.push(local);
    offset += local.length;
  }
  const list = Buffer.concat(central);
  const end = Buffer.alloc(22);
  end.write('PK\x05\x06', 'latin1');
  end.writeUInt16LE(entries.length, 8);
  end.writeUInt16LE(entries.length, 10);
  end.writeUInt32LE(list.length, 12);
  end.writeUInt32LE(offset, 16);
  return Buffer.concat([...locals, list, end]);
}
