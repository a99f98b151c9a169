import { Loading } from "#lib/ui/loading.tsx";

export default Loading;
