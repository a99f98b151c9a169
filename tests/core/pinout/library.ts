// Small symbol libraries for tests, written as the file format writes them.

export function library(...symbols: string[]): string {
  return `(kicad_symbol_lib (version 20211014) (generator test)\n${symbols.join("\n")}\n)`;
}

export function symbol(name: string, ...content: string[]): string {
  return `  (symbol "${name}" (in_bom yes) (on_board yes)\n${content.join("\n")}\n  )`;
}

export function property(key: string, value: string): string {
  return `    (property "${key}" "${value}" (id 0) (at 0 0 0) (effects (font (size 1.27 1.27)) hide))`;
}

export function unit(name: string, ...pins: string[]): string {
  return `    (symbol "${name}"\n${pins.join("\n")}\n    )`;
}

export function pin(type: string, shape: string, name: string, number: string, hidden = ""): string {
  return `      (pin ${type} ${shape} (at 0 0 0) (length 5.08) ${hidden}
        (name "${name}" (effects (font (size 1.27 1.27))))
        (number "${number}" (effects (font (size 1.27 1.27))))
      )`;
}
