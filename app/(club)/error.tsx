"use client";

export { Trouble as default } from "#lib/ui/trouble.client.tsx";
